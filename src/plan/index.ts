// The plan layer: what a plan is, how it is read, weighed, hashed and checked.
export * from "./schema.ts";
