// What the solver of a pose hands on: all devices, forces, strokes and motions in SI, before it is put into words.

import type { RowLoad } from "./condense.ts";
import type { Condensed, ContactResult } from "./contact.ts";
import type { Device } from "./devices.ts";
import type { Diagrams } from "./diagramData.ts";
import type { HorizontalResult } from "./horizontal.ts";
import type { Layout } from "./layout.ts";
import type { SetModel } from "./setModel.ts";
import type { NamedHold } from "./sideways.ts";
import type { State } from "./state/types.ts";

/** A solved pose before it is put into words; all in SI. */
export interface Solution {
  status: "solved" | "mechanism" | "unsettled";
  motion: string;
  state: State;
  model: SetModel;
  layout: Layout;
  devices: Device[];
  /** The condensed problem; its arrays belong to the workspace, whose next solve writes over them. */
  problem: Condensed;
  contact: ContactResult;
  /** Tension of every hoist that the second-order terms and sideways forces were built with, N. */
  tension: Float64Array;
  /** Net load on the picks of every hoist, N. */
  hoistForce: Float64Array;
  /** Loads on rows of the set beside the devices: given hoist loads, moments of sideways forces. */
  loads: RowLoad[];
  stops: Int8Array;
  /** Force per cylinder, N, and its stroke, m out positive. */
  cylinderForce: Float64Array;
  stroke: Float64Array;
  /** Sideways forces that were in force in the vertical problem; null where none exist. */
  horizontal: HorizontalResult | null;
  holds: NamedHold[];
  passes: number;
  residual: { force: number; moment: number };
  /** Diagrams of its girders, kept from when they are first asked for; null before. */
  diagrams: Diagrams | null;
}
