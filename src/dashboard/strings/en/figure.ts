/** What of a figure is measured, and what is only drawn. */
export const figure = {
  solid: 'Solid: measured',
  pale: 'Pale: drawn for orientation',
  /** The same, where there is little room. */
  paleShort: 'Pale: drawn',
  drill: {
    title: 'The drill',
    drawn: 'The drill, drawn',
    show: 'Show the drill',
    play: 'Play',
    pause: 'Pause',
    step: { address: 'Address', hold: 'Hold', release: 'Release', catch: 'Catch' },
    says: {
      address: 'Take your address and keep still.',
      hold: 'Swing to the top and hold still.',
      release: 'Let go: the chest turns and bends down first, the arms wait, the club falls.',
      catch: 'Catch the falling club with the trail arm still rotated outward.',
    },
    notMeasured: 'The drill is drawn, not measured.',
    slow: 'The fall is shown four times slower.',
    best: 'Your best repetition',
    simulatedBest: 'Best repetition of the simulated student',
    which: (when: string, index: number): string => `${when}, repetition ${index}`,
    none: 'Your best repetition appears here after your first scored rehearsal.',
    inStep: 'Top, release and catch come at the same moment; the time between is stretched.',
    beside: 'Compare with the drill',
  },
};
