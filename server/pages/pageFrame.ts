import { escapeMarkup } from '../map/escape';

/**
 * A page that needs nothing besides itself: no script, no font, no address. Its policy says so, and sounds stand in it as
 * data. It follows the colours that the reader's system asks for, light or dark, or
 * the theme of an editor that shows it. `ownStyle` is CSS of one kind of page.
 */
export function pageFrame(title: string, sections: readonly string[], ownStyle = ''): string {
  return `<!DOCTYPE html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta http-equiv="Content-Security-Policy" content="${policy}">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>${escapeMarkup(title)}</title>
<style>${style}${ownStyle}</style>
</head>
<body>
<main>
<h1>${escapeMarkup(title)}</h1>
${sections.join('\n')}
</main>
</body>
</html>
`;
}

const policy =
  "default-src 'none'; style-src 'unsafe-inline'; media-src data:; img-src data:; base-uri 'none'; form-action 'none'";

const light =
  'color-scheme: light; --ink: #1b1f24; --soft: #57606a; --ground: #fff; --card: #f5f6f8; --line: #c9ced6; --first: #0b5cad; --second: #a04400; --rest: #1b1f24;';
const dark =
  'color-scheme: dark; --ink: #e4e7eb; --soft: #a9b1bb; --ground: #16191d; --card: #1f2328; --line: #444c56; --first: #79b8ff; --second: #ffab70; --rest: #e4e7eb;';

const strongLight =
  'color-scheme: light; --ink: #000; --soft: #000; --ground: #fff; --card: #fff; --line: #000; --first: #003d7a; --second: #7a2f00; --rest: #000;';
const strongDark =
  'color-scheme: dark; --ink: #fff; --soft: #fff; --ground: #000; --card: #000; --line: #fff; --first: #9cd0ff; --second: #ffc59a; --rest: #fff;';

// An editor that shows the page names its colours by a class of the body.
const style = `
:root, body.vscode-light { ${light} }
@media (prefers-color-scheme: dark) { :root { ${dark} } }
body.vscode-dark { ${dark} }
body.vscode-high-contrast { ${strongDark} }
body.vscode-high-contrast-light { ${strongLight} }
* { box-sizing: border-box; }
body { margin: 0; background: var(--ground); color: var(--ink); font: 15px/1.5 system-ui, sans-serif; }
main { max-width: 1100px; margin: 0 auto; padding: 24px 20px 60px; }
h1 { font-size: 22px; } h2 { font-size: 18px; margin-top: 36px; } h3 { font-size: 15px; margin: 0 0 4px; }
.soft { color: var(--soft); }
.caution { border-left: 4px solid var(--second); background: var(--card); padding: 8px 12px; }
.wide { overflow-x: auto; }
table { border-collapse: collapse; width: 100%; font-size: 13px; }
th, td { text-align: left; vertical-align: top; padding: 4px 10px 4px 0; border-bottom: 1px solid var(--line); }
td.number { text-align: right; white-space: nowrap; font-variant-numeric: tabular-nums; }
.card { background: var(--card); border: 1px solid var(--line); border-radius: 6px; padding: 12px 14px; margin: 14px 0; }
.sounds { display: grid; grid-template-columns: repeat(auto-fit, minmax(260px, 1fr)); gap: 12px; margin-top: 8px; }
.sounds svg { height: 52px; margin: 4px 0; }
.sounds audio { width: 100%; display: block; }
.first { color: var(--first); } .second { color: var(--second); } .rest { color: var(--rest); }
svg { display: block; width: 100%; height: auto; }
.map .marked { position: relative; min-width: 620px; }
.map .mark { position: absolute; width: 24px; height: 24px; margin: -12px; border-radius: 12px; background: var(--ink); color: var(--ground); font: 600 12px/24px system-ui, sans-serif; text-align: center; text-decoration: none; }
.map .mark:hover { background: var(--second); }
.card:target { border-color: var(--second); box-shadow: 0 0 0 1px var(--second); }
svg text { fill: var(--soft); font: 11px system-ui, sans-serif; }
svg .grid { stroke: var(--line); stroke-width: 1; }
svg .area { fill: var(--second); stroke: var(--second); }
svg .wave { fill: currentColor; } svg .zero { stroke: var(--line); }
:focus-visible { outline: 2px solid var(--first); outline-offset: 2px; }
@media print { .sounds audio { display: none; } }
`;
