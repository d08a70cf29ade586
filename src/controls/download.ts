// Hands a text to the user as a file.

/** Saves a text under a name by the browser's own download. */
export function download(name: string, text: string, type: string): void {
  const address = URL.createObjectURL(new Blob([text], { type }));
  const link = document.createElement("a");
  link.href = address;
  link.download = name;
  document.body.append(link);
  link.click();
  link.remove();
  // The browser reads the address after this task.
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}
