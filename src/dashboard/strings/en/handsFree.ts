/** Pausing without the keyboard. */
export const handsFree = {
  title: 'Hands-free',
  doubleTap: 'A double tap on the chest sensor pauses and resumes',
  how: 'Stand still and tap the sensor twice with a finger, not while you swing or hold. A voice confirms it a second later.',
  honest:
    'Tested with simulated movement only. On a real chest a cough, a clap or clothes can trigger a pause, so it is off until you turn it on.',
  paused: 'Paused.',
  resumed: 'Resumed.',
};
