/**
 * What no line holds that a person reads: control characters (NUL and line breaks among them), the two separators of
 * Unicode, and what turns the direction of writing, by which one name can be made to look like another. The inside of
 * a class of a regular expression, with and without its `u` flag.
 */
export const NOT_IN_A_LINE =
  '\\u0000-\\u001f\\u007f-\\u009f\\u2028\\u2029\\u061c\\u200e\\u200f\\u202a-\\u202e\\u2066-\\u2069';

const FOUND = new RegExp(`[${NOT_IN_A_LINE}]`);

/** The one rule for names, titles and other single lines, at every border. */
export const isOneLine = (text: string): boolean => !FOUND.test(text);
