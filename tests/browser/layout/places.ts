/** Where a page is looked at, CSS px. At 200 % a laptop's window holds half as many px each way. */
export const PLACES = [
  { name: 'laptop', width: 1366, height: 768, scale: 1 },
  { name: 'phone', width: 390, height: 844, scale: 1 },
  { name: '200 %', width: 683, height: 384, scale: 2 },
] as const;
