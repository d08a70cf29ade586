// The material of every body: matt, with its edges drawn as thin dark lines by the shader, so that they cost no geometry.
import { type Color, MeshLambertMaterial } from "three";

/**
 * A matt material that draws a line of about one pixel where the vertex attribute `edge` comes to 0 or 1.
 * A face that is narrower than a few pixels gets a fainter line, so that far bodies do not turn into blots.
 */
export function edgedMaterial(edge: Color, vertexColors: boolean): MeshLambertMaterial {
  const material = new MeshLambertMaterial({ vertexColors });
  const uniforms = { edgeColour: { value: edge } };
  material.onBeforeCompile = (shader) => {
    Object.assign(shader.uniforms, uniforms);
    shader.vertexShader = shader.vertexShader
      .replace("#include <common>", "#include <common>\nattribute vec2 edge;\nvarying vec2 vEdge;")
      .replace("#include <begin_vertex>", "#include <begin_vertex>\nvEdge = edge;");
    shader.fragmentShader = shader.fragmentShader
      .replace("#include <common>", "#include <common>\nuniform vec3 edgeColour;\nvarying vec2 vEdge;")
      .replace(
        "#include <opaque_fragment>",
        `vec2 across = max(fwidth(vEdge), vec2(1e-5));
        vec2 away = min(vEdge, 1.0 - vEdge) / across;
        vec2 line = (1.0 - smoothstep(0.5, 1.3, away)) * (1.0 - 0.75 * smoothstep(0.12, 0.5, across));
        outgoingLight = mix(outgoingLight, edgeColour, 0.72 * max(line.x, line.y));
        #include <opaque_fragment>`,
      );
  };
  material.customProgramCacheKey = () => "edged";
  material.userData = uniforms;
  return material;
}
