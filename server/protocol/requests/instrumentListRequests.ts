import { RequestType } from 'vscode-languageserver-protocol';

/** What a check found in an instrument and the files that it includes. */
export interface InstrumentState {
  errors: number;
  warnings: number;
  /** Information and hints. */
  others: number;
  /** Findings of samples that are not there. */
  missingSamples: number;
}

/** The URIs of the instruments in the open folders, by path; files that others include are parts and not among them. */
export const InstrumentListRequest = {
  type: new RequestType<object, string[], void>('zonewright/instruments'),
} as const;

/** Checks an instrument, as it stands in the editor where it is open; `null` where the file holds none. */
export const CheckInstrumentRequest = {
  type: new RequestType<{ uri: string }, InstrumentState | null, void>('zonewright/checkInstrument'),
} as const;

/** The SFZ instrument that includes a file, by its name; `null` for a file that none includes. */
export const IncludedByRequest = {
  type: new RequestType<{ uri: string }, { name: string } | null, void>('zonewright/includedBy'),
} as const;
