// Words about who chose a limit.

/** Who says that it governs. */
export function chosenWords(chosenBy: string): string {
  if (chosenBy === "default") return "stands by default";
  return chosenBy.startsWith("rule ") ? `ready-made ${chosenBy}` : `chosen by ${chosenBy}`;
}
