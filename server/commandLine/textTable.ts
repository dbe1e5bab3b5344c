/** Lays rows out in columns for a person to read: cells padded to the widest, two spaces between, numbers to the right. */
export function textTable(headings: readonly string[], rows: readonly (readonly string[])[]): string {
  const widths = headings.map((heading, column) =>
    Math.max(heading.length, ...rows.map((row) => row[column]?.length ?? 0)),
  );
  const numeric = headings.map((_, column) => rows.every((row) => /^-?[\d.]*$/.test(row[column] ?? '')));
  return [headings, ...rows]
    .map((row) =>
      row
        .map((cell, column) =>
          numeric[column] ? cell.padStart(widths[column] as number) : cell.padEnd(widths[column] as number),
        )
        .join('  ')
        .trimEnd(),
    )
    .map((line) => `${line}\n`)
    .join('');
}
