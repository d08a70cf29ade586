// The scene as one component: it is told what to draw by its properties and knows no store.
import { useEffect, useRef, useState } from "react";
import type { Part } from "../shape/index.ts";
import { type Live, startScene } from "./live.tsx";
import type { SceneProps } from "./types.ts";
import { partWords } from "./words.ts";
import "./scene.css";

interface Hover {
  x: number;
  y: number;
  lines: string[];
}

/** Farther than this (px) between press and release is a drag, no click. */
const still = 4;

/** The name by which a part is chosen: its support's if it has just one, else its own. */
function nameOf(part: Part | null): string {
  if (part === null) return "";
  return part.supports.length === 1 ? part.supports[0] : part.name;
}

/** The support of the label under the pointer, or null. */
function labelled(target: EventTarget): string | null {
  return target instanceof Element
    ? (target.closest("[data-support]")?.getAttribute("data-support") ?? null)
    : null;
}

/**
 * The 3D scene of one pose. Fills its parent; drag to pan (in the free view to turn), wheel to zoom, double click to fit
 * again. Draws a frame only when something changed.
 */
export function Scene(props: SceneProps) {
  const host = useRef<HTMLDivElement>(null);
  const live = useRef<Live | null>(null);
  const latest = useRef(props);
  latest.current = props;
  const pressed = useRef<{ x: number; y: number; support: string | null } | null>(null);
  const waiting = useRef(0);
  const [hover, setHover] = useState<Hover | null>(null);
  const [able, setAble] = useState(true);

  useEffect(() => {
    if (host.current === null) return;
    const made = startScene(host.current, setAble);
    live.current = made;
    made.show(latest.current);
    return () => {
      cancelAnimationFrame(waiting.current);
      live.current = null;
      made.end();
    };
  }, []);
  useEffect(() => live.current?.show(props));

  const placeIn = (event: { clientX: number; clientY: number }) => {
    const box = host.current?.getBoundingClientRect();
    return { x: event.clientX - (box?.left ?? 0), y: event.clientY - (box?.top ?? 0) };
  };
  const look = (event: React.PointerEvent) => {
    if (event.buttons !== 0 || event.pointerType === "touch") return setHover(null);
    const { x, y } = placeIn(event);
    const support = labelled(event.target);
    cancelAnimationFrame(waiting.current);
    waiting.current = requestAnimationFrame(() => {
      const model = live.current?.model();
      if (model === null || model === undefined) return;
      const part: Part | null =
        support === null
          ? (live.current?.partAt(x, y) ?? null)
          : { name: support, what: "rigging", supports: [support] };
      setHover(
        part === null ? null : { x, y, lines: partWords(part, model.reactions, latest.current.units) },
      );
    });
  };
  const choose = (event: React.PointerEvent) => {
    const from = pressed.current;
    pressed.current = null;
    const { x, y } = placeIn(event);
    if (event.button !== 0 || from === null || Math.hypot(x - from.x, y - from.y) > still) return;
    latest.current.onSelect?.(from.support ?? nameOf(live.current?.partAt(x, y) ?? null));
  };
  const right = hover !== null && hover.x > (host.current?.clientWidth ?? 0) / 2;
  return (
    // biome-ignore lint/a11y/noStaticElementInteractions: pointing tells nothing that labels and tables do not tell too
    <div
      ref={host}
      className="scene"
      data-theme={props.theme}
      data-view={props.view}
      onPointerMove={look}
      onPointerLeave={() => {
        cancelAnimationFrame(waiting.current);
        setHover(null);
      }}
      onPointerDown={(event) => {
        pressed.current = { ...placeIn(event), support: labelled(event.target) };
        setHover(null);
      }}
      onPointerUp={choose}
      onDoubleClick={() => live.current?.refit()}
    >
      {!able && (
        <p className="scene-unable">
          This browser gives no WebGL: numbers and dimensions are shown, bodies are not.
        </p>
      )}
      {hover !== null && (
        <div
          className={right ? "scene-hover to-left" : "scene-hover"}
          style={{ left: hover.x, top: hover.y }}
          aria-hidden="true"
        >
          {hover.lines.map((line) => (
            <div key={line}>{line}</div>
          ))}
        </div>
      )}
    </div>
  );
}
