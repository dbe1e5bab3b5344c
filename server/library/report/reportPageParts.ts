/** The look of the page: the reader's own letters, light or dark as they prefer. */
export const reportStyle = `
:root { color-scheme: light dark; font: 15px/1.45 system-ui, sans-serif; }
body { margin: 1.5rem; }
h1 { font-size: 1.4rem; margin: 0 0 .3rem; }
.wide { overflow-x: auto; }
table { border-collapse: collapse; }
th, td { border-bottom: 1px solid color-mix(in srgb, currentColor 25%, transparent); padding: .3rem .6rem; text-align: left; vertical-align: top; }
thead th { position: sticky; top: 0; background: Canvas; }
thead button { font: inherit; font-weight: 600; border: 0; padding: 0; background: none; color: inherit; cursor: pointer; }
th[aria-sort="ascending"] button::after { content: " ↑"; }
th[aria-sort="descending"] button::after { content: " ↓"; }
tbody th { font-weight: 500; }
.number { text-align: right; font-variant-numeric: tabular-nums; }
tr.failed td:nth-child(2) { font-weight: 700; text-decoration: underline; }
tr.stale td:nth-child(2), tr.missing td:nth-child(2) { font-style: italic; }
summary { cursor: pointer; }
ul { margin: .3rem 0; padding-left: 1.2rem; max-width: 60rem; font-size: .9em; }
svg { width: 96px; height: 40px; border: 1px solid currentColor; }
svg { overflow: hidden; } rect { fill: currentColor; fill-opacity: .35; stroke: currentColor; stroke-width: .6; }
`;

/** Sorting by a click on a heading, and filtering by words. */
export const reportScript = `
const body = document.querySelector('tbody');
const rows = [...body.rows];
const valueOf = (row, at) => row.cells[at].querySelector('summary')?.textContent ?? row.cells[at].textContent;
for (const [at, button] of [...document.querySelectorAll('thead button')].entries()) {
  button.addEventListener('click', () => {
    const head = button.parentElement;
    const falls = head.getAttribute('aria-sort') === 'ascending';
    for (const other of document.querySelectorAll('thead th[aria-sort]')) other.setAttribute('aria-sort', 'none');
    head.setAttribute('aria-sort', falls ? 'descending' : 'ascending');
    const collator = new Intl.Collator(undefined, { numeric: true });
    rows.sort((a, b) => (falls ? -1 : 1) * collator.compare(valueOf(a, at), valueOf(b, at)));
    body.append(...rows);
  });
}
const filter = document.getElementById('filter');
filter.addEventListener('input', () => {
  const words = filter.value.toLowerCase().split(/\\s+/);
  let count = 0;
  for (const row of rows) {
    row.hidden = !words.every((word) => row.textContent.toLowerCase().includes(word));
    if (!row.hidden) count++;
  }
  document.getElementById('count').textContent = count + ' of ' + rows.length;
});
`;
