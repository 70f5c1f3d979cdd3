import type { HelpTopics } from '../../../help/topic.ts';

/** Help for the student's pages. Words in quotes are the names of buttons and pages. */
export const student = {
  drill: {
    title: 'The drill: hold, release, catch',
    body: [
      'You rehearse one movement slowly and in pieces, until the order is right: chest first, arms later.',
      {
        terms: [
          ['Hold', 'Swing to the top of your backswing and stay still there.'],
          [
            'Release',
            'Let go of the club. At the same moment your chest turns and bends down toward the ball. Your arms wait.',
          ],
          [
            'Catch',
            'Catch the falling club with the trail arm, still rotated outward. For a right-handed golfer the trail arm is the right arm.',
          ],
        ],
      },
      'The usual faults: the arms start first, you stand up out of your posture, or the trail arm rotates inward early. You rarely feel these yourself. That is why Stillcatch measures each repetition and tells you.',
    ],
  },
  first: {
    title: 'Your first practice',
    body: [
      {
        steps: [
          'Open “Today” and press “Start a practice”. Choose demo sensors if you have no sensors yet: a simulated student then does what you are asked.',
          'Answer the safety questions honestly. They come before every practice.',
          'Strap on both sensors and do the calibration: stand, bow three times, raise the trail arm three times, stand. It takes about 40 seconds and every step is spoken.',
          'Take your address and stay still for two seconds.',
          'Practise. Stand 3 to 4 m from the screen. You do not need to look: a tone and one short sentence follow each rehearsal.',
          'End the practice with E. Rate your pain, write a note if you like, and read what to do next time.',
        ],
      },
    ],
  },
  strap: {
    title: 'Where the sensors go',
    body: [
      {
        points: [
          'Chest: on the breastbone, flat and tight. It must not rock when you breathe.',
          'Trail arm: on the outside of the upper arm, just above the elbow. Further up, the skin hides part of the rotation.',
          'Any way round is fine; the calibration finds the axes. After that the sensors must not move.',
          'Snug, not too tight: one finger should fit under the strap. If your hand tingles, take the sensor off.',
        ],
      },
      'If one has slipped, calibrate again. A sensor that moved makes every number wrong.',
    ],
  },
  tones: {
    title: 'What you hear',
    body: [
      {
        terms: [
          ['One tick', 'I am listening: you are at address and still, or a step begins.'],
          ['One rising tone', 'You have held long enough.'],
          ['Two tones up', 'Passed.'],
          ['Two tones down', 'Not passed. The sentence after it says what to change.'],
          ['Two wooden knocks', 'A ball is next.'],
          ['Three pulses', 'A safety warning. Read it on the screen.'],
          ['A slow falling tone', 'A sensor was lost.'],
        ],
      },
      'You can try all tones under “More”. Everything that is spoken is also written on the screen. If there is no sound: press a key or click once, because browsers keep a page silent until then; then check “Mute” and the volume of the computer.',
      'After a few passes in a row Stillcatch stops praising each one. The tone alone tells you that it was right.',
    ],
  },
  verdict: {
    title: 'Passed, not passed, not scored',
    body: [
      'A rehearsal has passed when it reached every target of your plan. If it missed one, you hear the first one that it missed, in this order: hold, chest first, posture, arm, turn, catch. One change at a time.',
      {
        terms: [
          ['Not scored', 'The signal had a gap or hit its limit, so it cannot be judged fairly.'],
          [
            'Ball',
            'A full swing with a hit. It is measured with the same measures and gets no verdict.',
          ],
          ['Practice swing', 'A full swing without a hit. It is listed and not counted.'],
        ],
      },
      'If a repetition was taken for the wrong kind, correct it at once: R rehearsal, B ball, I ignore. U undoes the correction.',
    ],
  },
  signs: {
    title: 'The signs',
    body: [
      'The same signs are used on every page. The shape alone tells them apart, not the colour.',
    ],
  },
  measures: {
    title: 'What is measured, and how sure it is',
    body: [
      'Each measure shows its value, the target of the plan as a bracket, and how sure it is as a whisker. The targets are coaching choices; there is no published norm. Compare yourself only with yourself.',
    ],
  },
  mix: {
    title: 'Rehearsals and balls',
    body: [
      'Your plan says how many rehearsals come before a ball. Two to one is common practice. Stillcatch counts for you: two knocks mean that a ball is next.',
      'A ball that came too early still counts as a ball. The session then shows that the ratio was not kept.',
      'Carry-over shows whether the movement of your rehearsals also appears when you hit balls. 1 means the same movement, 0 means none of it. It needs at least three usable rehearsals and three usable balls.',
    ],
  },
  pain: {
    title: 'Pain and warnings',
    body: [
      'Press H at any time to rate a pain. The practice pauses. At 4 or 5 of 10, or 2 more than at the start, stop for the day. Above 5, or if it is sharp, locking, giving way or numb, stop and get advice from a licensed health professional before you practise again.',
      'A warning stays on the screen until you confirm it: press Enter for the newest one, wherever the focus is. Only in a text box with several lines and in an open question does Enter keep its usual meaning. Warnings are saved with the session, and your coach sees them first.',
      'Your own range: you can measure how far you move comfortably. Stillcatch then warns you before a rehearsal gets near that end. It never compares you with other people.',
      'Stillcatch is a training aid, not a medical device. Follow your local rules, the rules of your range or club, and your licensed health professional; those come first. Read the page “Safety”.',
    ],
  },
  sessions: {
    title: 'After the practice: sessions and progress',
    body: [
      '“Sessions” lists every practice. Open one to see each repetition: the curves, the body from the front and along the target line, and each measure against its target. Use the arrow keys to walk through the repetitions, Enter to open one and Escape to go back.',
      '“Compare with” lays a second repetition over the first and says which differences are larger than the measurement can be wrong.',
      '“Progress” shows your measures over weeks and months. Simulated and watched practices never count.',
      {
        points: [
          'Export: the recording (.zip, an open format), the repetitions (.csv), angle curves (.csv) and orientations (.sto).',
          'Import: choose a .zip or drop it on the page.',
          'Delete: you can undo it for 30 days.',
        ],
      },
    ],
  },
  plan: {
    title: 'Your plan',
    body: [
      'The plan says what is asked: the stage, the ratio, how many repetitions at most, and the target of each measure. Every practice is judged by the plan that it was done under, even if the plan changes later.',
      'If your coach set the plan, only your coach can change it. Otherwise you can change it yourself on the page “Plan”.',
    ],
  },
  coach: {
    title: 'Working with your coach',
    body: [
      {
        steps: [
          'Your coach sends you an invitation. Open it and join.',
          'On your own page of the hub, make a pairing code.',
          'On this computer open “Coach” and enter the address of the hub and the code.',
          'Read what is sent, and agree or do not agree. You can change your mind at any time.',
        ],
      },
      'From then on each practice is sent by itself when it has ended. If the connection is lost, it goes on where it stopped. Comments and new plans from your coach appear on “Today” and “Coach”, and you can answer there.',
      'Sent are: the recording of both sensors, what was measured, your pain ratings and your note. No picture, no sound, no place.',
    ],
  },
  trouble: {
    title: 'When a sensor does not work',
    body: [
      {
        terms: [
          [
            'It is not found',
            'Switch it on, bring it within 5 m, and close other programs or phones that are connected with it. On the page “Sensors” you see why Bluetooth is not ready. On the command line, “npx stillcatch doctor” says what is missing.',
          ],
          [
            'It is lost during a practice',
            'The practice goes on and the sensor is looked for. What you do meanwhile is not scored. Keep the computer in front of you: the body blocks the radio.',
          ],
          [
            'Many readings are lost',
            'Bring the computer closer and move away from other radios such as a Wi-Fi router.',
          ],
          [
            'The two are swapped',
            'Stillcatch notices it in the calibration. One press swaps them; you need not take them off.',
          ],
          [
            'The calibration is refused',
            'It says why: usually the movement was too fast or not in one plane, or a strap is loose. Bow slowly from the hips and raise the arm straight forward.',
          ],
        ],
      },
    ],
  },
  screen: {
    title: 'A second screen',
    body: [
      'A phone or tablet near you can show the practice in very large words. Open “More”, then “Second screen”, and follow the steps. It only shows; nothing can be changed from there. Use a network of your own: others in the same network could read along.',
    ],
  },
  data: {
    title: 'Where your data is',
    body: [
      'Everything stays in one folder on this computer, usually “.stillcatch” in your home folder. Nothing is sent anywhere unless you connect with a coach and agree.',
      {
        points: [
          'Backup: end the program and copy that folder. To restore it, put the copy in its place.',
          'A practice is saved while it runs. If the computer stops, the session is still there at the next start, marked as interrupted.',
          'If the disk is full, the practice goes on and the page says so.',
        ],
      },
    ],
  },
} satisfies HelpTopics;
