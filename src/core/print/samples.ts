/** Elements of a raster wanted for its statistics. */
const wanted = 60000;
/** At least one element in so many, each way: neighbours tell much the same. */
const leastStep = 4;

/** Where a raster is sampled for its statistics: evenly, what does not count and the outermost left out, as o = j · width + i in rising order. */
export function samplePlaces(width: number, height: number, out: Uint8Array): Int32Array {
  const step = Math.max(leastStep, Math.round(Math.sqrt((width * height) / wanted)));
  const places = new Int32Array(Math.ceil(width / step) * Math.ceil(height / step));
  let many = 0;
  for (let j = 1; j < height - 1; j += step)
    many = addRow(places, many, j * width + 1, (j + 1) * width - 1, step, out);
  return places.subarray(0, many);
}

function addRow(
  places: Int32Array,
  first: number,
  from: number,
  to: number,
  step: number,
  out: Uint8Array,
): number {
  let many = first;
  for (let o = from; o < to; o += step) if (out[o] === 0) places[many++] = o;
  return many;
}

/** What a raster holds there. */
export function valuesAt(raster: Float32Array, places: Int32Array): Float32Array {
  const values = new Float32Array(places.length);
  for (let k = 0; k < places.length; k++) values[k] = raster[places[k]!]!;
  return values;
}
