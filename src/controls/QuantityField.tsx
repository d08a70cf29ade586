// A field for a quantity: typed in the user's units or any other of its kind, kept in one; what is ambiguous is refused.
import {
  printFull,
  readTyped,
  type Shown,
  type System,
  signOf,
  type UnitName,
  unitFor,
} from "../units/index.ts";
import type { CellRead } from "./gridModel.ts";
import { TypedField } from "./TypedField.tsx";

/** Reads a quantity within its bounds, which are given in `keptIn`. */
export function readQuantity(
  text: string,
  of: { keptIn: UnitName; shownIn: UnitName; least: number | null; most: number | null },
): CellRead {
  const got = readTyped(text, of.keptIn, of.shownIn);
  if (!got.ok) return got;
  const low = of.least !== null && got.value < of.least;
  const high = of.most !== null && got.value > of.most;
  if (!low && !high) return { ok: true, value: got.value };
  const bound = (value: number) => `${printFull(value, of.keptIn, of.shownIn)} ${of.shownIn}`;
  const allowed = `${of.least === null ? "" : `from ${bound(of.least)} `}${of.most === null ? "" : `to ${bound(of.most)}`}`;
  return {
    ok: false,
    problem: `"${text.trim()}" is ${low ? "too small" : "too large"}; allowed: ${allowed.trim()}. Correct the number or its unit.`,
  };
}

/** A quantity with its unit. `value` is in `keptIn`; null while nothing is set. */
export function QuantityField(props: {
  label: string;
  value: number | null;
  keptIn: UnitName;
  shown: Shown;
  system: System;
  least?: number | null;
  most?: number | null;
  commit: (value: number) => void;
  problem?: string;
  says?: string;
  whenEmpty?: string;
}) {
  const { label, value, keptIn, shown, system, least = null, most = null, commit, ...rest } = props;
  const shownIn = unitFor(shown, system);
  return (
    <TypedField
      label={label}
      number
      unit={signOf(shown, system)}
      text={value === null ? "" : printFull(value, keptIn, shownIn)}
      read={(text) => readQuantity(text, { keptIn, shownIn, least, most })}
      commit={(got) => commit(got as number)}
      {...rest}
    />
  );
}
