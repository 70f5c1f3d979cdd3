/** What of a figure is measured, and what is only drawn. */
export const figure = {
  solid: 'Solid: measured',
  pale: 'Pale: drawn for orientation',
  /** The same, where there is little room. */
  paleShort: 'Pale: drawn',
};
