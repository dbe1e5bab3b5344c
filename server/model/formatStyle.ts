/** Where the opcodes of a header stand: beside it, one a line below it, or beside it for regions alone. */
export const headerLayouts = ['regionsInline', 'inline', 'ownLine'] as const;
export type HeaderLayout = (typeof headerLayouts)[number];

/** Whether opcodes keep their order, or come in the usual one: sample, keys, velocities, conditions, sound. */
export const opcodeOrders = ['keep', 'canonical'] as const;
export type OpcodeOrder = (typeof opcodeOrders)[number];

/** How text is laid out. */
export interface FormatStyle {
  headers: HeaderLayout;
  opcodeOrder: OpcodeOrder;
  /** Whether the opcodes of regions in successive lines stand in columns. */
  alignColumns: boolean;
  /** One step of indentation, in notations that nest. */
  indentation: string;
}

/** The style where nothing is set. */
export const usualFormatStyle: FormatStyle = {
  headers: 'regionsInline',
  opcodeOrder: 'keep',
  alignColumns: false,
  indentation: '  ',
};
