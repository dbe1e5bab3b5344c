/** Headings that speak of turns and of nothing else. */
export const turnWord = /\b(?:rr|robins?|seq|altern\p{L}*)|ラウンドロビン|交互/iu;
