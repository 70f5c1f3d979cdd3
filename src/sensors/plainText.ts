/** What turns the direction of writing, and line ends that only Unicode knows. The inside of a class of a pattern. */
const TURNED = '\\u2028\\u2029\\u202a-\\u202e\\u2066-\\u2069';
/** Marks and spaces that are not seen, by which one name can look like another. */
const UNSEEN = '\\u00ad\\u061c\\u200b\\u200e\\u200f\\u2060-\\u2064\\ufeff';

const NOT_IN_A_LINE = `\\u0000-\\u001f\\u007f-\\u009f${TURNED}${UNSEEN}`;
/** Line ends and tabs are in words; so are marks that what is pasted often brings. */
const NOT_IN_WORDS = `\\u0000-\\u0008\\u000b\\u000c\\u000e-\\u001f\\u007f-\\u009f${TURNED}`;

/** Something to be seen, and nothing of a class. Read once: no text costs more than its length. */
const seen = (without: string): string => `^(?=[^]*\\S)[^${without}]*$`;

/** The one rule for names, titles and other single lines, and for words of several lines, at every border. */
export const LINE_PATTERN = seen(NOT_IN_A_LINE);
export const WORDS_PATTERN = seen(NOT_IN_WORDS);

const unfit = new RegExp(`[${NOT_IN_A_LINE}]`);
const unfitWord = new RegExp(`[${NOT_IN_WORDS}]`);
const unfitWords = new RegExp(unfitWord, 'g');

/** The same rule for what may be empty. */
export const isOneLine = (text: string): boolean => !unfit.test(text);
export const isWords = (text: string): boolean => !unfitWord.test(text);

/** Words that came where nothing can be refused, without what they may not hold. */
export const plainWords = (text: string): string => text.replace(unfitWords, '');
