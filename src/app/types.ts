// The types of the layers below that the screen needs, handed on in one place.
export type {
  Answer,
  BucklingStage,
  Finding,
  GirderEnvelope,
  Level,
  Result,
  SetBuckling,
  SetResult,
  SpreadResult,
  StagesAsked,
  UnbackedStretch,
  UseStrip,
  WayBack,
  WayBackTry,
  When,
  WorstAt,
} from "../checks/index.ts";
export type { Plan, PlanError, PlanSet, Step, WayBackStep } from "../plan/index.ts";
export type { Table } from "../report/index.ts";
export type { Pose, SetContext, SetRun, StepRun, Support, SupportKind } from "../sequence/index.ts";
export type { System } from "../units/index.ts";
