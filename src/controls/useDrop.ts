// Files dropped anywhere on the page.
import { useEffect, useState } from "react";

/** What a browser gives of a dropped file so that it can be written again; not every browser does. */
interface DroppedItem {
  getAsFileSystemHandle?: () => Promise<{ kind: string } | null>;
}

/**
 * Hands over the first file that is dropped on the window, with the handle to write it again or null; true while a file
 * hovers over it.
 */
export function useDrop(open: (file: File, handle: unknown) => void): boolean {
  const [over, setOver] = useState(false);
  useEffect(() => {
    const hasFile = (event: DragEvent) => event.dataTransfer?.types.includes("Files") ?? false;
    const onOver = (event: DragEvent) => {
      if (!hasFile(event)) return;
      event.preventDefault();
      setOver(true);
    };
    const onLeave = (event: DragEvent) => {
      if (event.relatedTarget === null) setOver(false);
    };
    const onDrop = (event: DragEvent) => {
      if (!hasFile(event)) return;
      event.preventDefault();
      setOver(false);
      const file = event.dataTransfer?.files[0];
      if (file === undefined) return;
      // Asked for while the drop lasts: the list is empty afterwards.
      const item = event.dataTransfer?.items[0] as DroppedItem | undefined;
      const asked = item?.getAsFileSystemHandle?.() ?? Promise.resolve(null);
      asked.then(
        (handle) => open(file, handle?.kind === "file" ? handle : null),
        () => open(file, null),
      );
    };
    window.addEventListener("dragover", onOver);
    window.addEventListener("dragleave", onLeave);
    window.addEventListener("drop", onDrop);
    return () => {
      window.removeEventListener("dragover", onOver);
      window.removeEventListener("dragleave", onLeave);
      window.removeEventListener("drop", onDrop);
    };
  }, [open]);
  return over;
}
