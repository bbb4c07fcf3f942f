// The two faces of a connector as points to draw: looking at the mating face, and its mirror image, the solder side.
import type { Part } from "../../records/index.js";

export interface FacePoint {
  readonly contact: string;
  readonly x: number;
  readonly y: number;
}

type Connector = Extract<Part, { type: "connector" }>;

const scale = 12;
const margin = 22;

export function facesOf(part: Connector): readonly { title: string; width: number; height: number; points: readonly FacePoint[] }[] {
  const xs = part.face.map((f) => f.x_mm);
  const ys = part.face.map((f) => f.y_mm);
  const left = Math.min(...xs);
  const right = Math.max(...xs);
  const top = Math.max(...ys);
  const width = (right - left) * scale + margin * 2;
  const height = (top - Math.min(...ys)) * scale + margin * 2;
  const round = (n: number) => Math.round(n * 10) / 10;
  const points = (mirrored: boolean) =>
    part.face.map((f) => ({
      contact: f.contact,
      x: round((mirrored ? right - f.x_mm : f.x_mm - left) * scale + margin),
      y: round((top - f.y_mm) * scale + margin),
    }));
  return [
    { title: "Looking at the mating face", width: round(width), height: round(height), points: points(false) },
    { title: "Looking at the solder side", width: round(width), height: round(height), points: points(true) },
  ];
}
