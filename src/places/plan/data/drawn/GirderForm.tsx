// Girders by plate sizes: elevation, the chosen piece's cross-section with its properties, and what the set weighs.
import { useEffect, useRef, useState } from "react";
import { QuantityField } from "../../../../controls/index.ts";
import {
  fieldOf,
  type Girder,
  type PlanPath,
  pieceSection,
  printPath,
  steelOf,
} from "../../../../plan/index.ts";
import { print, type Shown } from "../../../../units/index.ts";
import { useApp } from "../../../appContext.ts";
import { labelOf, withTyped } from "../changes.ts";
import type { OwnFormProps } from "../table.ts";
import { GirderElevationDrawing } from "./GirderElevationDrawing.tsx";
import { SectionDrawing } from "./SectionDrawing.tsx";
import { elevationOf } from "./steel.ts";
import { LedgerTable, TakeOffTable } from "./WeightTables.tsx";
import { weighed } from "./weights.ts";
import "./drawn.css";

/** The six sizes of a piece, in the order of the drawing from the top. */
const sizes: readonly { key: "topFlange_mm" | "web_mm" | "bottomFlange_mm"; at: 0 | 1; words: string }[] = [
  { key: "topFlange_mm", at: 0, words: "top flange, width" },
  { key: "topFlange_mm", at: 1, words: "top flange, thickness" },
  { key: "web_mm", at: 0, words: "web, height" },
  { key: "web_mm", at: 1, words: "web, thickness" },
  { key: "bottomFlange_mm", at: 0, words: "bottom flange, width" },
  { key: "bottomFlange_mm", at: 1, words: "bottom flange, thickness" },
];

/** Section properties of a piece, with the name of each. */
function Properties(props: {
  ground: OwnFormProps["ground"];
  girder: Girder;
  piece: number;
  density: number;
}) {
  const { ground, girder, piece, density } = props;
  const { system } = ground;
  const of = girder.pieces[piece];
  const s = pieceSection(of);
  const above = s.depth - s.centroid;
  const rows: readonly [string, number, Shown][] = [
    ["depth", s.depth, "smallLength"],
    ["area A", s.area, "smallArea"],
    ["web area", s.webArea, "smallArea"],
    ["centroid above the soffit", s.centroid, "smallLength"],
    ["I about the horizontal axis", s.strongInertia, "inertia"],
    ["S of the top fibre, I over its distance", s.strongInertia / above, "modulus"],
    ["S of the bottom fibre", s.strongInertia / s.centroid, "modulus"],
    ["I about the vertical axis", s.weakInertia, "inertia"],
    ["St Venant torsion constant", s.torsion, "inertia"],
    ["mass per length, plates alone", s.area * density, "lineMass"],
    ["length", of.to_m - of.from_m, "length"],
    ["mass of its plates", s.area * density * (of.to_m - of.from_m), "mass"],
  ];
  return (
    <table className="drawn-table">
      <caption>{`Section of ${girder.line} ${of.mark ?? `piece ${piece + 1}`}`}</caption>
      <tbody>
        {rows.map(([words, value, shown]) => (
          <tr key={words}>
            <th scope="row">{words}</th>
            <td className="number">{print(value, shown, system)}</td>
          </tr>
        ))}
      </tbody>
    </table>
  );
}

/** The piece whose row in a table below has the focus; null for any other place. */
function rowFocused(target: Element, lines: string): { girder: number; piece: number } | null {
  const row = target.closest("tbody tr");
  const table = row?.closest("[role=grid]")?.getAttribute("aria-label");
  const girder = lines.split("\n").findIndex((line) => table === `Pieces of girder ${line}`);
  return row === null || girder < 0 ? null : { girder, piece: (row as HTMLTableRowElement).sectionRowIndex };
}

export function GirderForm({ ground, set: setIndex }: OwnFormProps) {
  const { plan, system } = ground;
  const app = useApp();
  const set = plan.sets[setIndex];
  const [chosen, choose] = useState({ girder: 0, piece: 0 });
  const g = Math.min(chosen.girder, set.girders.length - 1);
  const girder = set.girders[g];
  const p = Math.min(chosen.piece, girder.pieces.length - 1);
  const piece = girder.pieces[p];
  const at: PlanPath = ["sets", setIndex, "girders", g, "pieces", p];
  const lines = set.girders.map(({ line }) => line).join("\n");
  const all = weighed(set);
  const { density } = steelOf(set);
  const form = useRef<HTMLElement>(null);
  useEffect(() => {
    const part = form.current?.parentElement;
    if (!part) return;
    const onFocus = (event: FocusEvent) => {
      const row = rowFocused(event.target as Element, lines);
      if (row !== null) choose(row);
    };
    part.addEventListener("focusin", onFocus);
    return () => part.removeEventListener("focusin", onFocus);
  }, [lines]);
  return (
    <section ref={form} className="drawn-form" aria-label="Girder">
      <div className="grid-tools">
        <label className="choice">
          Girder
          <select value={g} onChange={(event) => choose({ girder: Number(event.target.value), piece: p })}>
            {set.girders.map(({ line }, i) => (
              // biome-ignore lint/suspicious/noArrayIndexKey: a girder is told by its place; its name may be blank while it is typed.
              <option key={i} value={i}>
                {line}
              </option>
            ))}
          </select>
        </label>
        <span className="quiet">Choose a piece in the drawing: click it, or use the arrows.</span>
        <button
          type="button"
          onClick={() => app.setView({ dataAt: printPath([...at, "topFlange_mm", 0]) })}
        >{`Row of ${piece.mark ?? `piece ${p + 1}`}`}</button>
      </div>
      <GirderElevationDrawing
        line={girder.line}
        elevation={elevationOf(set, girder)}
        chosen={p}
        choose={(next) => choose({ girder: g, piece: next })}
        system={system}
      />
      <div className="drawn-row">
        <SectionDrawing piece={piece} system={system} />
        <div className="drawn-fields">
          {sizes.map(({ key, at: end, words }) => {
            const path = [...at, key, end];
            const field = fieldOf(path, plan);
            return (
              <QuantityField
                key={`${g} ${p} ${words}`}
                label={words}
                value={piece[key][end]}
                keptIn="mm"
                shown="smallLength"
                system={system}
                least={field?.least ?? null}
                most={field?.most ?? null}
                commit={(value) => {
                  if (field === null) return;
                  ground.edit({
                    label: labelOf(plan, { ...field, path }, words, value, system),
                    change: (draft) => withTyped(draft, path, value),
                  });
                }}
              />
            );
          })}
        </div>
        <Properties ground={ground} girder={girder} piece={p} density={density} />
      </div>
      {all.ok ? (
        <div className="drawn-row">
          <TakeOffTable takeOff={all.takeOff} system={system} />
          <LedgerTable set={set} takeOff={all.takeOff} system={system} />
        </div>
      ) : (
        <p className="flags">{`◆ ${all.words}`}</p>
      )}
    </section>
  );
}
