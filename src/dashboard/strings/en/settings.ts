/** What a person sets for the whole page. */
export const settings = {
  language: 'Language',
  languageWhy: 'The page loads anew; a practice goes on.',
};
