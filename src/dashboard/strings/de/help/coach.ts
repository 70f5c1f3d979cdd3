import type { Strings } from '../../shape.ts';

/** Hilfe zu den Seiten des Coachs im Hub. */
export const coach: Strings['help']['coach'] = {
  begin: {
    title: 'Der erste Abend',
    body: [
      {
        steps: [
          'Starte den Hub. Er zeigt eine Adresse und beim ersten Mal einen Einmalcode. Mit dem Code richtest du den Club ein und wirst sein Inhaber.',
          'Lade einen Schüler ein. Du bekommst einen Link und einen Code zum Scannen. Schick ihn selbst; der Hub verschickt keine E-Mails.',
          'Der Schüler tritt bei und koppelt den Computer, mit dem er trainiert.',
          'Von da an kommt jedes Training von selbst hier an, gemessen und nach Dringlichkeit geordnet.',
        ],
      },
      'Eine Einladung lässt sich von anderen Computern nur öffnen, wenn der Hub von dort erreichbar ist. Beginnt der Link mit localhost oder 127.0.0.1, öffnet er sich nur auf diesem Computer; wie man das ändert, steht in der Anleitung für Betreiber.',
      'Zum Umsehen gibt es den Democlub: erfundene Menschen, simulierte Trainings, die wirklich gemessen werden.',
    ],
  },
  needs: {
    title: 'Wer braucht mich',
    body: [
      'Die Liste ordnet die Schüler nach Dringlichkeit und nennt den Grund: zuerst Schmerzen und Warnungen, dann Fragen und nicht durchgesehene Trainings, dann nicht eingehaltene Pläne.',
      'Schmerzen bleiben oben, bis ein späteres Training ohne sie war oder du sie mit einem Grund abschließt. Ein Training als durchgesehen zu markieren genügt dafür nicht.',
      'Schüler ohne etwas Dringendes stehen darunter. Ruhige Trainings lassen sich zusammen als durchgesehen markieren.',
      'J und K gehen durch die Liste, Enter öffnet, N geht zum nächsten Training, / sucht.',
    ],
  },
  review: {
    title: 'Ein Training durchsehen',
    body: [
      'Die Seite beginnt mit dem Satz, den der Schüler bekommen hat: der einen Sache, die sich ändern soll. Dann folgen alle Wiederholungen als Zeichen der Reihe nach. Öffne eine, um ihre Kurven, den Körper von vorn und entlang der Ziellinie und jede Messgröße mit dem Zielwert des Plans zu sehen.',
      {
        points: [
          'C schreibt einen Kommentar: zur Wiederholung, zum Moment unter dem Regler oder zum ganzen Training.',
          'L sagt, was eine Wiederholung wirklich war, wenn sie falsch erkannt wurde. Urteil und Zahlen folgen.',
          'R markiert das Training als durchgesehen, N öffnet das nächste.',
        ],
      },
      'Ein Film (mp4 oder webm) steht neben den Kurven und läuft mit dem Regler mit, sobald er ausgerichtet ist: Zeig, wo ein Fang oder drei Momente im Film sind.',
      'Der Schüler liest deine Kommentare auf seinen Seiten und kann antworten. Eine Frage in der Notiz eines Schülers hat ein eigenes „Antworten“.',
    ],
  },
  signs: {
    title: 'Die Zeichen',
    body: [
      'Auf jeder Seite stehen dieselben Zeichen. Man erkennt sie an der Form, nicht nur an der Farbe.',
    ],
  },
  measures: {
    title: 'Was gemessen wird und wie sicher es ist',
    body: [
      'Zu jeder Messgröße siehst du den Wert, den Zielwert des Plans als Klammer und die Messunsicherheit als Strich. Die Zielwerte sind Entscheidungen des Trainings; eine veröffentlichte Norm gibt es nicht. Vergleiche einen Schüler nur mit sich selbst: An einem anderen Menschen sitzt der Gurt anders.',
    ],
  },
  plan: {
    title: 'Pläne',
    body: [
      'Ein Plan nennt die Stufe, wie viele Übungen vor einem Ball kommen, die Höchstzahl an Wiederholungen je Training und Woche, den Zielwert jeder Messgröße, eine Checkliste und eine Nachricht. Beim Speichern entsteht eine neue Version, die sagt, was sich geändert hat. Frühere Trainings bleiben nach dem Plan beurteilt, unter dem sie stattfanden.',
      'Hat jemand anders den Plan gespeichert, während du ihn bearbeitet hast, siehst du beide Versionen und wählst. Entwürfe von Plänen, Kommentaren und Notizen bleiben beim Neuladen erhalten.',
      'Vorlagen sind Pläne ohne Schüler. Speichere eine im Planeditor und beginne den nächsten Plan mit ihr.',
    ],
  },
  compare: {
    title: 'Zwei Zeiträume vergleichen',
    body: [
      'Vergleiche die letzten Wochen mit den Wochen davor oder mit denselben Wochen vor einem Jahr. Jedes Training zählt einmal, gleich wie viele Wiederholungen es hatte.',
      'Zu jeder Messgröße siehst du den Unterschied, später minus früher, und den Bereich, in dem der wahre Unterschied wahrscheinlich liegt. Liegt die Null in diesem Bereich, kann der Unterschied Zufall sein. Weil viele Messgrößen zugleich verglichen werden, sind die Bereiche so weit, dass man ihnen allen zusammen trauen kann.',
      'Ein Sensor, der anders sitzt, verschiebt alle Werte eines Trainings. Ein Unterschied von wenigen Grad über Monate kann vom Gurt kommen.',
    ],
  },
  report: {
    title: 'Der Bericht',
    body: [
      'Der Bericht ist zum Mitgeben: Training nach Monaten, jede Messgröße über die Zeit, die Übertragung auf Bälle, der Plan, deine Kommentare und wie sicher die Zahlen sind. Drucke ihn oder speichere ihn im Druckfenster des Browsers als PDF.',
    ],
  },
  pain: {
    title: 'Schmerzen, Warnungen und was sich daraus nicht schließen lässt',
    body: [
      'Stillcatch ist eine Trainingshilfe, kein Medizinprodukt. Es misst Bewegung, kein Verletzungsrisiko. Örtliche Regeln, die Regeln von Anlage oder Club und der Rat von Ärztin, Arzt oder Physiotherapie gehen vor.',
      'Es kennt keinen sicheren Winkel und keine Belastung des Rückens, es stellt keine Diagnose und verhütet keine Verletzungen. Die Bereiche, vor denen es warnt, sind die des Schülers selbst, von ihm gemessen.',
      'Wer Schmerzen von 4 oder mehr angibt oder 2 mehr als am Anfang, wird gebeten, für den Tag aufzuhören. Frag, wie es geht, bevor du mehr verlangst. Hält es an, verweise an Ärztin, Arzt oder Physiotherapie.',
    ],
  },
  people: {
    title: 'Wer sieht was',
    body: [
      {
        terms: [
          ['Schüler', 'Nur die eigenen Trainings, den eigenen Plan und die eigenen Kommentare.'],
          ['Coach', 'Nur die eigenen Schüler.'],
          [
            'Inhaber',
            'Ein Coach, der sich auch um die Coachs kümmert und das Protokoll liest. Die Schüler anderer Coachs sieht er nicht.',
          ],
        ],
      },
      'Der Inhaber kann einen Schüler zu einem anderen Coach verschieben. Der neue Coach sieht dann alles, der alte nichts mehr. Es steht im Protokoll.',
      'Die Daten eines Schülers lassen sich in einer .zip ausgeben und werden auf Wunsch endgültig gelöscht. In früheren Sicherungen bleiben sie.',
      'Passwort vergessen: Erzeuge für den Schüler eine neue Einladung. Sie ersetzt Name, Anmeldung und Passwort.',
    ],
  },
};
