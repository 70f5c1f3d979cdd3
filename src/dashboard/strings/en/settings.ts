/** Settings of the page and of the person. */
export const settings = {
  language: 'Language',
  languageWhy: 'The page reloads. A practice keeps running.',
  you: 'You',
  name: 'Your name',
  nameWhy: 'Shown here and on printouts. It is not part of any recording and is not sent anywhere.',
  keepName: 'Save',
  nameKept: 'Saved.',
  hand: 'You play',
  handWhy:
    'Applies from your next practice. Right-handed: your right arm is the trail arm. Left-handed: your left arm.',
  folder: 'Your data',
  folderPath: (path: string): string => `Saved on this computer in ${path}`,
};
