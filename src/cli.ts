// The command line's root: finds the command by its name and hands it the rest of the words. A new command is one line in the list.
import { version } from "../package.json";

/** One command: how it is called, what it does, and the work. The number returned is the exit code. */
interface Command {
  readonly usage: string;
  readonly summary: string;
  readonly run: (words: readonly string[]) => number | Promise<number>;
}

const print = (text: string): void => {
  process.stdout.write(`${text}\n`);
};
const complain = (text: string): void => {
  process.stderr.write(`${text}\n`);
};

const commands: Readonly<Record<string, Command>> = {
  help: {
    usage: "help",
    summary: "lists the commands and the exit codes",
    run: () => {
      print(overview());
      return 0;
    },
  },
  version: {
    usage: "version",
    summary: "prints the version",
    run: () => {
      print(version);
      return 0;
    },
  },
};

/** The list of commands, the exit codes and the caution, as text. */
function overview(): string {
  const width = Math.max(...Object.values(commands).map((c) => c.usage.length));
  return [
    "Handspan: erection plan of bridge girder sets. Use: npm run --silent handspan -- COMMAND ...",
    "",
    ...Object.values(commands).map((c) => `  ${c.usage.padEnd(width)}  ${c.summary}`),
    "",
    "Exit codes: 0 solved, no stop; 1 a finding of level stop; 2 bad input; 3 no equilibrium.",
    "Planning aid only: not a substitute for a licensed engineer, the maker's charts and manuals,",
    "the crane's own limiter, or a competent person on site.",
  ].join("\n");
}

/** Runs one command line and gives its exit code: 2 for a word that names no command. */
async function main(words: readonly string[]): Promise<number> {
  const [name, ...rest] = words;
  if (name === undefined) {
    complain(overview());
    return 2;
  }
  const command = Object.hasOwn(commands, name) ? commands[name] : undefined;
  if (command === undefined) {
    complain(`'${name}' is no command. Commands are: ${Object.keys(commands).join(", ")}.`);
    return 2;
  }
  return command.run(rest);
}

process.exitCode = await main(process.argv.slice(2));
