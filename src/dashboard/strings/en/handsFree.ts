/** Pausing without a hand on the keyboard. */
export const handsFree = {
  title: 'Hands-free',
  doubleTap: 'A double tap on the chest sensor pauses and resumes',
  how: 'Tap the sensor twice with a finger, standing still, not while you swing or hold. A voice confirms it a second later.',
  honest:
    'Tried with simulated movement only. On a real chest a cough, a clap or clothes may pause too, so it is off until you switch it on.',
  paused: 'Paused.',
  resumed: 'Going on.',
};
