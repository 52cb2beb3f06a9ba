// The shape in three dimensions: one mesh, one draw call; a ring for the marker. Mounted by hand, so that it runs without a framework.
import {
  AmbientLight, BufferAttribute, BufferGeometry, DirectionalLight, DoubleSide, Mesh, MeshLambertMaterial, PerspectiveCamera, Raycaster, Scene, Sphere,
  Vector2, Vector3, WebGLRenderer,
} from "three";

interface Block { at: number; length: number; type: string }
export type By = "yarn" | "row" | "kind" | "strain" | "findings";
export type Way = "made" | "worn" | "flat";
export type Legend = [string, [number, number, number]][];
export interface ShapeData {
  data: string; parts: Record<string, Block>; settled?: boolean; notes?: string[]; level?: string; why?: string; ways?: Way[]; flat?: boolean;
  legends?: Partial<Record<By, Legend>>;
}

const TURN = Math.PI / 12;
/** Bytes of sRGB as the light that they stand for, which is what is lit and mixed. */
const LIGHT = Float32Array.from({ length: 256 }, (_, i) => { const c = i / 255; return c <= 0.04045 ? c / 12.92 : ((c + 0.055) / 1.055) ** 2.4; });
const MARKED = [1, 0.102, 0.024];
const lit = (bytes: ArrayLike<number>): Float32Array => Float32Array.from(bytes, (b) => LIGHT[b] ?? 0);

export interface ShapeView { update(data: ShapeData): void; mark(stitches: number[]): void;
  /** The colours of the yarn, those of another way, or of stitches by their number (sRGB bytes; `of` gives null for the rest). */
  colour(by: By, of?: (stitch: number) => [number, number, number] | null): void;
  turn(way: number, tilt: number): void; nearer(by: number): void; destroy(): void;
}

/** Whether pictures are drawn without a graphics card: then smooth edges cost more than they give. */
function drawnBySoftware(): boolean {
  const gl = document.createElement("canvas").getContext("webgl2"), told = gl?.getExtension("WEBGL_debug_renderer_info");
  const name = gl && told ? String(gl.getParameter(told.UNMASKED_RENDERER_WEBGL)) : "";
  gl?.getExtension("WEBGL_lose_context")?.loseContext();
  return /swiftshader|llvmpipe|software|basic render/i.test(name);
}

const SLOW_MS = 34, COARSEST = 0.35, REST_MS = 250;

export function mountShape(place: HTMLElement, picked: (stitch: number) => void): ShapeView {
  const renderer = new WebGLRenderer({ antialias: !drawnBySoftware(), alpha: true });
  const scene = new Scene(), camera = new PerspectiveCamera(30, 1, 1, 10000), lamp = new DirectionalLight(0xffffff, 2.2);
  scene.add(new AmbientLight(0xffffff, 1.1), lamp, camera);
  lamp.position.set(-1, 1.6, 2);
  place.append(renderer.domElement);
  let mesh: Mesh<BufferGeometry, MeshLambertMaterial> | null = null, ofVertex: Int32Array = new Int32Array(), own: Float32Array = new Float32Array();
  let yarn: Float32Array = new Float32Array(), painted: Partial<Record<By, Uint8Array>> = {}, first = true;
  let around = 0.35, above = 0.32, far = 500, waiting = false;
  const middle = new Vector3();
  let held: { x: number; y: number; moved: boolean } | null = null, last = 0, coarse = 1, rest: ReturnType<typeof setTimeout> | undefined;

  function draw(): void {
    if (waiting) return;
    waiting = true;
    requestAnimationFrame((now) => {
      waiting = false;
      pace(now);
      camera.position.set(
        middle.x + far * Math.cos(above) * Math.sin(around), middle.y - far * Math.cos(above) * Math.cos(around), middle.z + far * Math.sin(above),
      );
      camera.up.set(0, 0, 1);
      camera.lookAt(middle);
      lamp.position.copy(camera.position).add(new Vector3(-far * 0.4, 0, far * 0.6));
      lamp.target.position.copy(middle);
      lamp.target.updateMatrixWorld();
      renderer.render(scene, camera);
    });
  }

  /** While it is turned and frames come slowly, they are drawn coarser; at rest it is drawn fine again. */
  function pace(now: number): void {
    const took = now - last;
    last = now;
    if (!held?.moved) return;
    if (took < 1000 && took > SLOW_MS && coarse > COARSEST) { coarse = Math.max(COARSEST, coarse * 0.7); size(); }
    clearTimeout(rest);
    rest = setTimeout(() => { if (coarse < 1) { coarse = 1; size(); draw(); } }, REST_MS);
  }

  function size(): void { renderer.setPixelRatio(Math.min(devicePixelRatio, 2) * coarse); }

  function fit(): void {
    const width = place.clientWidth, height = Math.max(place.clientHeight, 240);
    size();
    renderer.setSize(width, height, false);
    camera.aspect = width / Math.max(1, height);
    camera.updateProjectionMatrix();
    draw();
  }
  const watch = new ResizeObserver(fit);
  watch.observe(place);

  const canvas = renderer.domElement;
  canvas.addEventListener("pointerdown", (e) => { held = { x: e.clientX, y: e.clientY, moved: false }; canvas.setPointerCapture(e.pointerId); });
  canvas.addEventListener("pointermove", (e) => {
    if (!held) return;
    const dx = e.clientX - held.x, dy = e.clientY - held.y;
    if (Math.abs(dx) + Math.abs(dy) > 3) held.moved = true;
    if (!held.moved) return;
    around -= dx * 0.01;
    above = Math.max(-1.5, Math.min(1.5, above + dy * 0.01));
    held = { x: e.clientX, y: e.clientY, moved: true };
    draw();
  });
  canvas.addEventListener("pointerup", (e) => { if (held && !held.moved) hit(e); held = null; });
  canvas.addEventListener("wheel", (e) => { e.preventDefault(); far *= Math.exp(e.deltaY * 0.001); draw(); }, { passive: false });

  function hit(e: PointerEvent): void {
    if (!mesh) return;
    const box = canvas.getBoundingClientRect();
    const ray = new Raycaster();
    ray.setFromCamera(new Vector2(((e.clientX - box.left) / box.width) * 2 - 1, 1 - ((e.clientY - box.top) / box.height) * 2), camera);
    const face = ray.intersectObject(mesh)[0]?.face;
    const stitch = face ? ofVertex[face.a] : undefined;
    if (stitch !== undefined && stitch >= 0) picked(stitch);
  }

  return {
    update(data) {
      mesh?.geometry.dispose();
      if (mesh) scene.remove(mesh);
      mesh = null;
      if (!data.parts || !data.data) { draw(); return; }
      const raw = Uint8Array.from(atob(data.data), (c) => c.charCodeAt(0)).buffer;
      const part = (name: string) => data.parts[name] as Block;
      const geometry = new BufferGeometry();
      const p = part("positions"), n = part("normals"), c = part("colours"), v = part("vertex_stitch"), i = part("indices");
      own = yarn = lit(new Uint8Array(raw, c.at, c.length));
      painted = {};
      for (const by of ["row", "kind", "strain"] as const) { const b = data.parts[`by_${by}`]; if (b) painted[by] = new Uint8Array(raw, b.at, b.length); }
      if (first || data.flat) { around = data.flat ? 0 : 0.35; above = data.flat ? 1.5 : 0.32; }
      first = data.flat ?? false;
      ofVertex = new Int32Array(raw, v.at, v.length);
      geometry.setAttribute("position", new BufferAttribute(new Float32Array(raw, p.at, p.length), 3));
      geometry.setAttribute("normal", new BufferAttribute(new Int8Array(raw, n.at, n.length), 3, true));
      geometry.setAttribute("color", new BufferAttribute(own.slice(), 3));
      geometry.setIndex(new BufferAttribute(new Uint32Array(raw, i.at, i.length), 1));
      mesh = new Mesh(geometry, new MeshLambertMaterial({ vertexColors: true, side: DoubleSide }));
      scene.add(mesh);
      geometry.computeBoundingSphere();
      const ball: Sphere = geometry.boundingSphere ?? new Sphere(new Vector3(), 100);
      middle.copy(ball.center);
      far = Math.max(20, ball.radius / Math.sin((camera.fov * Math.PI) / 360) * 1.05);
      camera.far = far * 10;
      fit();
    },
    mark(stitches) {
      const colour = mesh?.geometry.getAttribute("color") as BufferAttribute | undefined;
      if (!colour) return;
      const array = colour.array as Float32Array;
      array.set(own);
      const wanted = new Set(stitches);
      if (wanted.size) for (let i = 0; i < ofVertex.length; i++) if (wanted.has(ofVertex[i] ?? -1)) array.set(MARKED, 3 * i);
      colour.needsUpdate = true;
      draw();
    },
    colour(by, of) {
      own = yarn.slice();
      const plain: [number, number, number] = [0xb9, 0xc7, 0xc5];
      if (by !== "yarn") for (let i = 0; i < ofVertex.length; i++) {
        const s = ofVertex[i] ?? -1, p = painted[by];
        if (s < 0) continue;
        own.set(lit(of ? of(s) ?? plain : p ? p.subarray(3 * s, 3 * s + 3) : plain), 3 * i);
      }
    },
    nearer(by) { far *= by; draw(); },
    turn(way, tilt) { around += way * TURN; above = Math.max(-1.5, Math.min(1.5, above + tilt * TURN)); draw(); },
    destroy() { clearTimeout(rest); watch.disconnect(); mesh?.geometry.dispose(); renderer.dispose(); renderer.forceContextLoss(); canvas.remove(); },
  };
}
