// What stands in the scene graph: lights, site, girders and one instanced mesh per form of body.
import { extend, useFrame } from "@react-three/fiber";
import { memo, useEffect, useLayoutEffect, useMemo } from "react";
import {
  BufferGeometry,
  DirectionalLight,
  HemisphereLight,
  InstancedMesh,
  LineBasicMaterial,
  LineSegments,
  Mesh,
} from "three";
import { formNames, geometryOf, type Shown } from "./bodies.ts";
import { unitForms } from "./forms.ts";
import { edgedMaterial } from "./looks.ts";
import type { Model } from "./model.ts";
import { palette } from "./palette.ts";
import type { Theme } from "./types.ts";

extend({ DirectionalLight, HemisphereLight, InstancedMesh, LineSegments, Mesh });

interface Props {
  model: Model;
  theme: Theme;
  /** Where the mounted objects are noted. */
  shown: Shown;
  /** Called when objects were mounted or their materials changed: they must be filled. */
  onMounted: () => void;
  /** Called before every frame. */
  onFrame: () => void;
}

function disposeAll(of: Readonly<Record<string, { dispose: () => void }>>): void {
  for (const one of Object.values(of)) one.dispose();
}

/** The graph is built once per model and theme; poses only refill its buffers. */
export const Contents = memo(function Contents({ model, theme, shown, onMounted, onFrame }: Props) {
  const forms = useMemo(unitForms, []);
  const colours = palette(theme);
  const looks = useMemo(
    () => ({
      instanced: edgedMaterial(colours.edge, false),
      coloured: edgedMaterial(colours.edge, true),
      rope: new LineBasicMaterial({ color: colours.rope, transparent: true, opacity: 0.55 }),
    }),
    [colours],
  );
  const own = useMemo(
    () => ({
      girders: geometryOf(model.girders, true),
      ground: geometryOf(model.site.ground, false),
      nearSide: geometryOf(model.site.nearSide, false),
      lines: new BufferGeometry(),
    }),
    [model],
  );
  useEffect(() => () => disposeAll(forms), [forms]);
  useEffect(() => () => disposeAll(looks), [looks]);
  useEffect(() => () => disposeAll(own), [own]);
  // biome-ignore lint/correctness/useExhaustiveDependencies: new looks and new geometries must be filled again
  useLayoutEffect(onMounted, [looks, own, onMounted]);
  useFrame(onFrame);
  return (
    <>
      <hemisphereLight args={["#ffffff", "#b9b2a6", 1.9]} position={[0, 0, 1]} />
      <directionalLight position={[-0.45, -0.8, 0.95]} intensity={1.75} />
      {formNames.map((form) => (
        <instancedMesh
          key={form}
          args={[forms[form], looks.instanced, 0]}
          frustumCulled={false}
          ref={(mesh: InstancedMesh | null) => {
            shown.moving[form] = mesh;
          }}
        />
      ))}
      {formNames.map((form) => (
        <instancedMesh
          key={form}
          args={[forms[form], looks.instanced, 0]}
          frustumCulled={false}
          ref={(mesh: InstancedMesh | null) => {
            shown.fixed[form] = mesh;
          }}
        />
      ))}
      <mesh
        geometry={own.girders}
        material={looks.coloured}
        frustumCulled={false}
        ref={(mesh: Mesh | null) => {
          shown.girders = mesh;
        }}
      />
      <mesh
        geometry={own.ground}
        material={looks.coloured}
        frustumCulled={false}
        ref={(mesh: Mesh | null) => {
          shown.ground = mesh;
        }}
      />
      <mesh
        geometry={own.nearSide}
        material={looks.coloured}
        frustumCulled={false}
        ref={(mesh: Mesh | null) => {
          shown.nearSide = mesh;
        }}
      />
      <lineSegments
        geometry={own.lines}
        material={looks.rope}
        frustumCulled={false}
        ref={(mesh: LineSegments | null) => {
          shown.lines = mesh;
        }}
      />
    </>
  );
});
