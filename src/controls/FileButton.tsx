// A button that lets the user pick one file and hands over its text.
import { useRef } from "react";

/**
 * Picks a file by the browser's own dialog; the same file can be picked again after it was changed. `id` is that of the
 * form's field, for keys that press it; `instead` picks in another way where it answers true.
 */
export function FileButton(props: {
  words: string;
  accept: string;
  open: (file: File) => void;
  id?: string;
  title?: string;
  keys?: string;
  instead?: () => boolean;
}) {
  const input = useRef<HTMLInputElement>(null);
  return (
    <>
      <button
        type="button"
        title={props.title}
        aria-keyshortcuts={props.keys}
        onClick={() => {
          if (props.instead?.() !== true) input.current?.click();
        }}
      >
        {props.words}
      </button>
      <input
        ref={input}
        id={props.id}
        className="unseen"
        type="file"
        accept={props.accept}
        tabIndex={-1}
        aria-hidden="true"
        onChange={(event) => {
          const file = event.target.files?.[0];
          event.target.value = "";
          if (file !== undefined) props.open(file);
        }}
      />
    </>
  );
}
