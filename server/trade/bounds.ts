/** Bounds of values as the open SFZ format documents them. */
export const keyBounds = { least: 0, most: 127 } as const;
export const volumeBounds = { least: -144, most: 6 } as const;
export const tuneBounds = { least: -100, most: 100 } as const;
export const transposeBounds = { least: -127, most: 127 } as const;
export const panBounds = { least: -100, most: 100 } as const;
