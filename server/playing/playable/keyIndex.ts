/** Regions by key, in flat buffers: those of key k are `regions[start[k]]`..`regions[end[k] − 1]`, in the order of the text. */
export interface KeyIndex {
  start: Int32Array;
  end: Int32Array;
  regions: Int32Array;
}

/** Makes the index of regions with a range of keys; keys that the same regions answer share their list. */
export function indexByKey(
  regions: ArrayLike<number>,
  lowKey: ArrayLike<number>,
  highKey: ArrayLike<number>,
): KeyIndex {
  const isBoundary = new Uint8Array(129);
  const change = new Int32Array(129);
  isBoundary[0] = 1;
  for (let at = 0; at < regions.length; at++) {
    const low = lowKey[regions[at]];
    const high = highKey[regions[at]];
    if (low < 0 || high < low) continue;
    isBoundary[low] = 1;
    isBoundary[high + 1] = 1;
    change[low]++;
    change[high + 1]--;
  }
  const start = new Int32Array(128);
  const end = new Int32Array(128);
  const fill = new Int32Array(128);
  let size = 0;
  let answering = 0;
  let first = 0;
  for (let key = 0; key < 128; key++) {
    answering += change[key];
    if (isBoundary[key]) {
      first = size;
      size += answering;
    }
    start[key] = first;
    end[key] = first + answering;
    fill[key] = first;
  }
  const listed = new Int32Array(size);
  for (let at = 0; at < regions.length; at++) {
    const region = regions[at];
    const low = lowKey[region];
    if (low < 0) continue;
    for (let key = low; key <= highKey[region]; key++) {
      if (isBoundary[key]) listed[fill[key]++] = region;
    }
  }
  return { start, end, regions: listed };
}
