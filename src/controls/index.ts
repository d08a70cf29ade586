/**
 * controls: choosing, picking files, saving them, keys. Know nothing of bridges.
 *
 * ```ts
 * import { keyIsTaken } from "./index.ts";
 * keyIsTaken({ tagName: "SELECT", role: null }, "4"); // => true
 * keyIsTaken({ tagName: "BUTTON", role: null }, "4"); // => false
 * keyIsTaken({ tagName: "BUTTON", role: null }, " "); // => true
 * keyIsTaken(null, " "); // => false
 * ```
 */
export { Choice } from "./Choice.tsx";
export { download } from "./download.ts";
export { FileButton } from "./FileButton.tsx";
export { type Focused, keyIsTaken } from "./typing.ts";
export { useDrop } from "./useDrop.ts";
