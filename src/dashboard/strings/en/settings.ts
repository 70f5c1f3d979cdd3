/** What a person sets for the whole page, and of themselves. */
export const settings = {
  language: 'Language',
  languageWhy: 'The page loads anew; a practice goes on.',
  you: 'You',
  name: 'What you want to be called',
  nameWhy: 'Shown here and on what you print. No recording holds it and it is sent nowhere.',
  keepName: 'Keep',
  nameKept: 'Kept.',
  hand: 'You play',
  handWhy: 'It counts from the next practice: your trail arm is the right one, or the left one.',
  folder: 'What is kept',
  folderPath: (path: string): string => `Kept on this computer in ${path}`,
};
