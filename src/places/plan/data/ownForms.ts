// Forms of their own for parts of the plan, drawn above the tables of the part: a part has one when it is named here.
import { type ComponentType, lazy } from "react";
import type { PlanPart } from "../../../app/index.ts";
import type { OwnFormProps } from "./table.ts";

export const ownForms: Readonly<Partial<Record<PlanPart, ComponentType<OwnFormProps>>>> = {
  limits: lazy(() => import("./limits/LimitsForm.tsx").then((it) => ({ default: it.LimitsForm }))),
  cranes: lazy(() => import("./drawn/CraneCharts.tsx").then((it) => ({ default: it.CraneCharts }))),
  transporters: lazy(() => import("./drawn/GroupForm.tsx").then((it) => ({ default: it.GroupForm }))),
  girders: lazy(() => import("./drawn/GirderForm.tsx").then((it) => ({ default: it.GirderForm }))),
  ledger: lazy(() => import("./drawn/LedgerForm.tsx").then((it) => ({ default: it.LedgerForm }))),
  path: lazy(() => import("./drawn/PathForm.tsx").then((it) => ({ default: it.PathForm }))),
  seats: lazy(() => import("./drawn/SeatsForm.tsx").then((it) => ({ default: it.SeatsForm }))),
  picks: lazy(() => import("./drawn/AlongForm.tsx").then((it) => ({ default: it.AlongForm }))),
  onTransporters: lazy(() => import("./drawn/AlongForm.tsx").then((it) => ({ default: it.AlongForm }))),
};
