/** What an editor sets about the reading aids. */
export interface ReadingAids {
  /** Note names beside key numbers. */
  keyNames: boolean;
  /** What regions inherit, beside their header. */
  effectiveValues: boolean;
  /** Counts and ranges above headers. */
  codeLens: boolean;
}

/** Picks the settings of the reading aids out of the value of the section `zonewright`; what is not set has its default. */
export function readingAidsIn(section: unknown): ReadingAids {
  const settings = record(section);
  const hints = record(settings.hints);
  return {
    keyNames: hints.keyNames !== false,
    effectiveValues: hints.effectiveValues === true,
    codeLens: settings.codeLens !== false,
  };
}

function record(value: unknown): Record<string, unknown> {
  return typeof value === 'object' && value !== null ? (value as Record<string, unknown>) : {};
}
