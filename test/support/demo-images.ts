// The stand-in images of the demo club, made by the recipe its firmware record gives.
import { stream } from "../images/world.js";

/** Place of a version in the record's list, and its size: the recipe the record gives for its stand-in images. */
const places = { R2: [0, 32], R4: [1, 32], R4A: [2, 32], "R5.1": [4, 64], R6: [5, 64] } as const;
export const image = (version: keyof typeof places) => stream(1000 * places[version][0] + 7, places[version][1] * 1024);
