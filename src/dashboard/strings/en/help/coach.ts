import type { HelpTopics } from '../../../help/topic.ts';

/** Help for the coach's pages of the hub. Words in quotes are the names of buttons and pages. */
export const coach = {
  begin: {
    title: 'The first evening',
    body: [
      {
        steps: [
          'Start the hub. It prints an address and, the first time, a one-time code. With the code you set up the club and become its owner.',
          'Press “Invite a student”. You get a link and a code to scan. Send it to the student yourself; the hub sends no mail.',
          'The student joins, and pairs the computer that they practise with.',
          'From then on each practice arrives here by itself, measured and in order of need.',
        ],
      },
      'An invitation can only be opened from other computers if the hub can be reached from there. If the link begins with localhost or 127.0.0.1, it opens on this computer alone; the guide for operators says how to change that.',
      'To look around first, start the demo club: invented people, simulated practices that are really measured.',
    ],
  },
  needs: {
    title: 'Who needs me',
    body: [
      'The list puts students in order of need, and says the reason in words: pain and warnings first, then questions and sessions that nobody reviewed, then plans that were not kept.',
      'Pain stays at the top until a later session is free of it or you close it with a reason. Marking the session as reviewed does not close it.',
      'Students with nothing urgent are listed below. Calm sessions can be marked as reviewed together.',
      'J and K walk the list, Enter opens, N goes to the next session to review, / searches.',
    ],
  },
  review: {
    title: 'Reviewing a session',
    body: [
      'The page begins with the sentence that the student got: the one thing to change. Then come all repetitions as signs in order. Open one to see its curves, the body from the front and along the target line, and each measure against the target of the plan.',
      {
        points: [
          'C writes a comment: to the repetition, to the moment under the slider, or to the whole session.',
          'L says what a repetition really was, if it was taken for the wrong kind. Verdict and counts follow.',
          'R marks the session as reviewed, N opens the next one.',
        ],
      },
      'A film (mp4 or webm) stands beside the curves and moves with the slider once it is lined up: show where one catch, or three moments, are in the film.',
      'The student reads your comments on their own pages and can answer. A question in a student’s note has its own “Answer”.',
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
      'Each measure shows its value, the target of the plan as a bracket, and how sure it is as a whisker. The targets are coaching choices; there is no published norm. Compare a student only with themselves: a strap on another person sits differently.',
    ],
  },
  plan: {
    title: 'Plans',
    body: [
      'A plan says the stage, how many rehearsals come before a ball, the most repetitions in a session and in a week, the target of each measure, a checklist and a message. Saving makes a new version that says what changed. Earlier sessions stay judged by the plan that they were done under.',
      'If somebody else saved the plan while you were editing it, you see both versions and choose. Drafts of plans, comments and notes survive a reload.',
      'Templates are plans without a student. Save one from the plan editor, and start the next student’s plan from it.',
    ],
  },
  compare: {
    title: 'Comparing two periods',
    body: [
      'Compare the last weeks with the weeks before, or with the same weeks a year ago. Each session counts once, however many repetitions it had.',
      'For each measure you see the difference, later minus earlier, and the range that is likely to hold the true difference. If that range holds zero, the difference may be chance. Because many measures are compared at once, the ranges are widened so that all of them together can be trusted.',
      'A sensor that sits differently shifts every value of a session. A difference of a few degrees over months may be the strap.',
    ],
  },
  report: {
    title: 'The report',
    body: [
      'The report is for handing over: practice by month, each measure over time, carry-over, the plan, your comments and how sure the numbers are. Print it, or save it as a PDF in the print window of the browser.',
    ],
  },
  pain: {
    title: 'Pain, warnings and what you may not conclude',
    body: [
      'Stillcatch is a training aid, not a medical device. It measures movement, not injury risk. Local rules, the rules of the range or club, and licensed health professionals come first.',
      'It knows no safe angle and no load on the back, it makes no diagnosis and it does not prevent injury. The ranges that it warns about are the student’s own, measured by the student.',
      'When a student rated pain of 4 or more, or 2 more than at the start, the student was asked to stop for the day. Ask how it is before you ask for more. If it lasts, refer to a licensed health professional.',
    ],
  },
  people: {
    title: 'Who sees what',
    body: [
      {
        terms: [
          ['Student', 'Only their own sessions, plan and comments.'],
          ['Coach', 'Only their own students.'],
          [
            'Owner',
            'A coach who also looks after the coaches and reads the log. The owner does not see other coaches’ students.',
          ],
        ],
      },
      'The owner can move a student to another coach. The new coach then sees everything of the student, the old one nothing. It is written in the log.',
      'A student’s data can be exported in one .zip, and is permanently deleted on request. It stays in backups that were made before.',
      'Forgotten password: make a new invitation for that student. It replaces name, sign-in and password.',
    ],
  },
} satisfies HelpTopics;
