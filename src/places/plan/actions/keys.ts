// Keys of actions: their names as printed, as browsers tell them, and as screen readers are told of them.

/** Names on keyboards beside those that browsers give. */
const named: Readonly<Record<string, string>> = {
  Space: " ",
  Esc: "Escape",
  Left: "ArrowLeft",
  Right: "ArrowRight",
  Up: "ArrowUp",
  Down: "ArrowDown",
  "Page Up": "PageUp",
  "Page Down": "PageDown",
};

/** What is asked of a pressed key. */
export type Pressed = Pick<KeyboardEvent, "key" | "ctrlKey" | "metaKey" | "altKey" | "shiftKey">;

function parts(keys: string): { ctrl: boolean; shift: boolean; key: string } {
  const all = keys.split("+");
  const last = all[all.length - 1];
  return { ctrl: all.includes("Ctrl"), shift: all.includes("Shift"), key: named[last] ?? last };
}

/** Whether keys as printed were pressed. The Command key stands for Control; Shift counts only beside it. */
export function isPressed(keys: string, event: Pressed): boolean {
  const { ctrl, shift, key } = parts(keys);
  if (event.altKey || ctrl !== (event.ctrlKey || event.metaKey)) return false;
  if (ctrl && shift !== event.shiftKey) return false;
  return event.key.toLowerCase() === key.toLowerCase();
}

/** The value of aria-keyshortcuts for keys as printed. */
export function shortcutsOf(keys: readonly string[]): string {
  return keys
    .map((one) => {
      const { ctrl, shift, key } = parts(one);
      return `${ctrl ? "Control+" : ""}${shift ? "Shift+" : ""}${key === " " ? "Space" : key}`;
    })
    .join(" ");
}
