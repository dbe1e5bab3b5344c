/** The least that any reader of a text must do: looks at every character once; counts line ends and `=`. */
export function bareScan(text: string): number {
  let lines = 0;
  let equals = 0;
  for (let at = 0; at < text.length; at++) {
    const code = text.charCodeAt(at);
    if (code === 10) lines++;
    else if (code === 61) equals++;
  }
  return lines + equals;
}
