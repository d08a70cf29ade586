// The ways in which the scene can be looked at.
/**
 * Elevation, plan and end are parallel projections; free is a perspective that can be turned. Cranes is an elevation
 * that opens wide enough for every boom.
 */
export type View = "elevation" | "plan" | "end" | "free" | "cranes";
export type Theme = "light" | "dark";

/** Whether a view looks across the bridge from the right. */
export const isElevation = (view: View): boolean => view === "elevation" || view === "cranes";
