// Shapes of handles by what they move, 24 by 24 px: told apart without colour.
import type { ReactNode } from "react";
import type { MovableIs } from "../../../scene/index.ts";

export const handleShapes: Readonly<Record<MovableIs, ReactNode>> = {
  // A disc with arrows in four directions.
  crane: (
    <>
      <circle cx="12" cy="12" r="10" />
      <path d="M12 5v14M5 12h14M10 7l2-2 2 2M10 17l2 2 2-2M7 10l-2 2 2 2M17 10l2 2-2 2" />
    </>
  ),
  // A deck with arrows along it.
  transporter: (
    <>
      <rect x="2" y="6" width="20" height="12" rx="2" />
      <path d="M5 12h14M8 9l-3 3 3 3M16 9l3 3-3 3" />
    </>
  ),
  // A support that points up.
  bunk: (
    <>
      <path d="M12 3L22 20H2Z" />
      <path d="M8 16h8" />
    </>
  ),
  // A hold that points down.
  pick: (
    <>
      <path d="M12 21L2 4H22Z" />
      <path d="M8 8h8" />
    </>
  ),
  // An end with an arrow.
  start: (
    <>
      <path d="M3 3h5v18h-5Z" />
      <path d="M8 5h4l9 7-9 7h-4Z" />
    </>
  ),
};
