// One of a few: a native select with its label, for units, speeds and the like.
import { useId } from "react";

/** A labelled list to choose from; `words` gives the shown text of each value, in order. */
export function Choice<T extends string>(props: {
  label: string;
  value: T;
  words: Readonly<Record<T, string>>;
  choose: (value: T) => void;
  /** Hides the label from the eye, where the values speak for themselves. */
  quiet?: boolean;
}) {
  const { label, value, words, choose, quiet = false } = props;
  const id = useId();
  const values = Object.keys(words) as T[];
  return (
    <span className="choice">
      {/* Beside the list and not around it: around it, its words would hold every value of the list too. */}
      <label htmlFor={id} className={quiet ? "unseen" : ""}>
        {label}
      </label>
      <select
        id={id}
        value={value}
        onChange={(event) => {
          const chosen = values.find((one) => one === event.target.value);
          if (chosen !== undefined) choose(chosen);
        }}
      >
        {values.map((one) => (
          <option key={one} value={one}>
            {words[one]}
          </option>
        ))}
      </select>
    </span>
  );
}
