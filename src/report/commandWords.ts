// The words of a command line, sorted into those of the command and its options; and the part of a result that was asked for.

import type { Result } from "../checks/index.ts";

/** What a command takes: its use in words, its options, each with one value, and how many words beside them. */
export interface Taken {
  readonly usage: string;
  readonly options: readonly string[];
  readonly words: number;
}

/** Words of a command and values of its options; or a sentence on what is wrong with them. */
export function readWords(
  name: string,
  command: Taken,
  words: readonly string[],
): { plain: string[]; options: Map<string, string> } | string {
  const options = new Map<string, string>();
  const plain: string[] = [];
  const bad = (found: string) => `${name}: found ${found}; allowed: ${command.usage}. Correct the command.`;
  for (let i = 0; i < words.length; i++) {
    const word = words[i];
    if (!word.startsWith("--")) plain.push(word);
    else if (!command.options.includes(word)) return bad(`'${word}'`);
    else if (options.has(word)) return bad(`'${word}' twice`);
    else if (i + 1 === words.length || words[i + 1].startsWith("--"))
      return bad(`'${word}' without its value`);
    else options.set(word, words[++i]);
  }
  return plain.length === command.words
    ? { plain, options }
    : bad(`${plain.length} words beside the options`);
}

/** The result without the other sets and their findings; findings of the plan as a whole stay. */
export function partOf(result: Result, only: string | undefined): Result {
  if (only === undefined) return result;
  const sets = result.sets.filter((set) => set.setId === only);
  const findings = result.findings.filter((finding) => finding.set === only || finding.set === "");
  const levels = (["stop", "caution", "note"] as const).filter((l) => findings.some((f) => f.level === l));
  const complete = sets.every((set) => set.steps.every((step) => step.solved));
  return { ...result, sets, findings, worst: levels[0] ?? null, complete };
}
