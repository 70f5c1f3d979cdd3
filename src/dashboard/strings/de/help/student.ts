import type { Strings } from '../../shape.ts';

/** Hilfe zu den Seiten des Schülers. */
export const student: Strings['help']['student'] = {
  drill: {
    title: 'Die Übung: halten, loslassen, fangen',
    body: [
      'Du übst eine Bewegung langsam und in Teilen, bis die Reihenfolge stimmt: erst der Brustkorb, dann die Arme.',
      {
        terms: [
          ['Halten', 'Schwinge bis zum höchsten Punkt des Rückschwungs und halte dort still.'],
          [
            'Loslassen',
            'Lass den Schläger los. Im selben Moment dreht und beugt sich dein Brustkorb nach unten zum Ball. Die Arme warten.',
          ],
          [
            'Fangen',
            'Fang den Schläger mit dem hinteren Arm, der noch nach außen gedreht ist. Bei Rechtshändern ist das der rechte Arm, bei Linkshändern der linke.',
          ],
        ],
      },
      'Die häufigsten Fehler: Die Arme beginnen zuerst, du richtest dich auf, oder der hintere Arm dreht sich zu früh nach innen. Das spürst du selbst kaum. Deshalb misst Stillcatch jede Wiederholung und sagt es dir.',
    ],
  },
  first: {
    title: 'Dein erstes Training',
    body: [
      {
        steps: [
          'Öffne „Heute“ und starte ein Training. Ohne eigene Sensoren wähle Demosensoren: Dann macht ein simulierter Schüler, was verlangt wird.',
          'Beantworte die Sicherheitsfragen ehrlich. Sie kommen vor jedem Training.',
          'Schnalle beide Sensoren an und kalibriere: stehen, dreimal aus der Hüfte vorbeugen, dreimal den hinteren Arm heben, stehen. Das dauert etwa 40 Sekunden, und jeder Schritt wird angesagt.',
          'Geh in deine Ansprechhaltung und halte zwei Sekunden still.',
          'Übe. Steh 3 bis 4 m vom Bildschirm entfernt. Du musst nicht hinsehen: Nach jeder Übung hörst du einen Ton und einen kurzen Satz.',
          'Beende das Training mit E. Bewerte deine Schmerzen, schreib eine Notiz, wenn du magst, und lies, was du beim nächsten Mal tun kannst.',
        ],
      },
    ],
  },
  strap: {
    title: 'Wo die Sensoren sitzen',
    body: [
      {
        points: [
          'Brust: auf dem Brustbein, flach und fest. Er darf beim Atmen nicht wackeln.',
          'Arm: außen am Oberarm des hinteren Arms, dicht über dem Ellbogen. Weiter oben verdeckt die Haut einen Teil der Drehung.',
          'Wie herum ist gleich; die Kalibrierung findet die Achsen. Danach dürfen sich die Sensoren nicht mehr bewegen.',
          'Fest, aber nicht zu eng: Ein Finger soll unter den Gurt passen. Wenn die Hand kribbelt, nimm den Sensor ab.',
        ],
      },
      'Ist einer verrutscht, kalibriere neu. Ein verrutschter Sensor macht jede Zahl falsch.',
    ],
  },
  tones: {
    title: 'Was du hörst',
    body: [
      {
        terms: [
          [
            'Ein Tick',
            'Ich höre zu: Du stehst still in der Ansprechhaltung, oder ein Schritt beginnt.',
          ],
          ['Ein steigender Ton', 'Du hast lange genug gehalten.'],
          ['Zwei Töne nach oben', 'Bestanden.'],
          ['Zwei Töne nach unten', 'Nicht bestanden. Der Satz danach sagt, was du ändern kannst.'],
          ['Zweimal Klopfen auf Holz', 'Als Nächstes kommt ein Ball.'],
          ['Drei Impulse', 'Eine Warnung. Lies sie auf dem Bildschirm.'],
          ['Ein langsam fallender Ton', 'Ein Sensor ist weg.'],
        ],
      },
      'Unter „Mehr“ kannst du alle Töne anhören. Alles Gesprochene steht auch auf dem Bildschirm. Hörst du nichts: Drück einmal eine Taste oder klick einmal, denn so lange halten Browser eine Seite stumm. Prüfe dann „Stumm“ und die Lautstärke des Computers.',
      'Nach einigen bestandenen Übungen in Folge lobt Stillcatch nicht mehr jede. Der Ton allein sagt dir, dass sie richtig war.',
    ],
  },
  verdict: {
    title: 'Bestanden, nicht bestanden, nicht gewertet',
    body: [
      'Eine Übung ist bestanden, wenn sie jeden Zielwert deines Plans erreicht. Hat sie einen verfehlt, hörst du den ersten verfehlten, in dieser Reihenfolge: halten, Brustkorb zuerst, Haltung, Arm, Drehung, fangen. Immer nur eine Änderung.',
      {
        terms: [
          [
            'Nicht gewertet',
            'Das Signal hatte eine Lücke oder war am Anschlag. Dann lässt sich die Übung nicht gerecht beurteilen.',
          ],
          [
            'Ball',
            'Ein voller Schwung mit Treffer. Er wird genauso gemessen und bekommt kein Urteil.',
          ],
          [
            'Probeschwung',
            'Ein voller Schwung ohne Treffer. Er wird aufgeführt, aber nicht gezählt.',
          ],
        ],
      },
      'Wurde eine Wiederholung falsch erkannt, berichtige sie gleich: R Übung, B Ball, I nicht zählen. U nimmt die Berichtigung zurück.',
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
      'Zu jeder Messgröße siehst du den Wert, den Zielwert des Plans als Klammer und die Messunsicherheit als Strich. Die Zielwerte sind Entscheidungen des Trainings; eine veröffentlichte Norm gibt es nicht. Vergleiche dich nur mit dir selbst.',
    ],
  },
  mix: {
    title: 'Übungen und Bälle',
    body: [
      'Dein Plan sagt, wie viele Übungen vor einem Ball kommen. Üblich sind zwei zu eins. Stillcatch zählt für dich mit: Zweimal Klopfen heißt, dass ein Ball an der Reihe ist.',
      'Ein Ball, der zu früh kam, zählt trotzdem als Ball. Das Training zeigt dann, dass das Verhältnis nicht eingehalten wurde.',
      'Die Übertragung zeigt, ob die geübte Bewegung auch bei den Bällen auftaucht. 1 heißt dieselbe Bewegung, 0 heißt nichts davon. Dafür braucht es mindestens drei brauchbare Übungen und drei brauchbare Bälle.',
    ],
  },
  pain: {
    title: 'Schmerzen und Warnungen',
    body: [
      'Mit H kannst du jederzeit Schmerzen angeben. Das Training hält an. Bei 4 oder 5 von 10 oder 2 mehr als am Anfang: Hör für heute auf. Über 5, oder wenn es sticht, blockiert, wegknickt oder taub ist: Hör sofort auf und hol dir ärztlichen oder physiotherapeutischen Rat, bevor du wieder trainierst.',
      'Eine Warnung bleibt stehen, bis du sie bestätigst: Enter bestätigt die neueste, egal wo der Fokus ist. Nur in einem mehrzeiligen Textfeld und in einer offenen Frage behält Enter seine übliche Bedeutung. Warnungen werden mit dem Training gespeichert, und dein Coach sieht sie zuerst.',
      'Dein eigener Bereich: Du kannst messen, wie weit du dich angenehm bewegst. Stillcatch warnt dich dann, bevor eine Übung diesem Ende nahekommt. Es vergleicht dich nie mit anderen.',
      'Stillcatch ist eine Trainingshilfe, kein Medizinprodukt. Örtliche Regeln, die Regeln deiner Anlage oder deines Clubs und der Rat von Ärztin, Arzt oder Physiotherapie gehen vor. Lies die Seite „Sicherheit“.',
    ],
  },
  sessions: {
    title: 'Nach dem Training: Trainings und Fortschritt',
    body: [
      'Die Liste der Trainings zeigt jedes. Öffne eines, um jede Wiederholung zu sehen: Kurven, den Körper von vorn und entlang der Ziellinie und jede Messgröße mit ihrem Zielwert. Mit den Pfeiltasten gehst du durch die Wiederholungen, mit Enter öffnest du eine, mit Escape geht es zurück.',
      '„Vergleichen mit“ legt eine zweite Wiederholung darüber und sagt, welche Unterschiede größer sind als die Messunsicherheit.',
      '„Fortschritt“ zeigt deine Messgrößen über Wochen und Monate. Simulierte und abgespielte Trainings zählen nie mit.',
      {
        points: [
          'Ausgeben: die Aufnahme (.zip, ein offenes Format), die Wiederholungen (.csv), Winkelkurven (.csv) und Orientierungen (.sto).',
          'Einlesen: Wähle eine .zip oder zieh sie auf die Seite.',
          'Löschen: 30 Tage lang kannst du es rückgängig machen.',
        ],
      },
    ],
  },
  plan: {
    title: 'Dein Plan',
    body: [
      'Der Plan sagt, was verlangt wird: die Stufe, das Verhältnis, die Höchstzahl an Wiederholungen und den Zielwert jeder Messgröße. Jedes Training wird nach dem Plan beurteilt, unter dem es stattfand, auch wenn sich der Plan später ändert.',
      'Hat dein Coach den Plan gesetzt, kann nur dein Coach ihn ändern. Sonst änderst du ihn selbst auf der Seite „Plan“.',
    ],
  },
  coach: {
    title: 'Mit deinem Coach arbeiten',
    body: [
      {
        steps: [
          'Dein Coach schickt dir eine Einladung. Öffne sie und tritt bei.',
          'Erzeuge auf deiner eigenen Seite im Hub einen Kopplungscode.',
          'Öffne auf diesem Computer „Coach“ und gib die Adresse des Hubs und den Code ein.',
          'Lies, was gesendet wird, und stimme zu oder nicht. Du kannst es dir jederzeit anders überlegen.',
        ],
      },
      'Von da an wird jedes Training nach dem Ende von selbst gesendet. Bricht die Verbindung ab, geht es dort weiter, wo es aufgehört hat. Kommentare und neue Pläne deines Coachs erscheinen unter „Heute“ und „Coach“; dort kannst du auch antworten.',
      'Gesendet werden: die Aufnahme beider Sensoren, was gemessen wurde, deine Schmerzangaben und deine Notiz. Kein Bild, kein Ton, kein Ort.',
    ],
  },
  trouble: {
    title: 'Wenn ein Sensor nicht funktioniert',
    body: [
      {
        terms: [
          [
            'Er wird nicht gefunden',
            'Schalte ihn ein, bring ihn auf 5 m heran und schließe andere Programme oder Telefone, die mit ihm verbunden sind. Auf der Seite „Sensoren“ steht, warum Bluetooth nicht bereit ist. In der Befehlszeile sagt „npx stillcatch doctor“, was fehlt.',
          ],
          [
            'Er geht im Training verloren',
            'Das Training läuft weiter, und der Sensor wird gesucht. Was du inzwischen tust, wird nicht gewertet. Stell den Computer vor dich: Der Körper schirmt den Funk ab.',
          ],
          [
            'Viele Messwerte fehlen',
            'Stell den Computer näher heran, weg von anderen Funkgeräten wie einem WLAN-Router.',
          ],
          [
            'Die beiden sind vertauscht',
            'Stillcatch merkt das beim Kalibrieren. Ein Druck tauscht sie; du musst sie nicht abnehmen.',
          ],
          [
            'Die Kalibrierung wird abgelehnt',
            'Der Grund steht dabei: Meist war die Bewegung zu schnell oder nicht in einer Ebene, oder ein Gurt ist locker. Beuge dich langsam aus der Hüfte vor und heb den Arm gerade nach vorn.',
          ],
        ],
      },
    ],
  },
  screen: {
    title: 'Ein zweiter Bildschirm',
    body: [
      'Ein Telefon oder Tablet in deiner Nähe kann das Training in sehr großer Schrift zeigen. Öffne „Mehr“, dann „Zweiter Bildschirm“, und folge den Schritten. Es zeigt nur an; ändern lässt sich von dort nichts. Nimm ein eigenes Netz: Andere im selben Netz könnten mitlesen.',
    ],
  },
  data: {
    title: 'Wo deine Daten liegen',
    body: [
      'Alles bleibt in einem Ordner auf diesem Computer, meist „.stillcatch“ in deinem persönlichen Ordner. Nichts wird gesendet, solange du dich nicht mit einem Coach verbindest und zustimmst.',
      {
        points: [
          'Sicherung: Beende das Programm und kopiere den Ordner. Zum Zurückholen leg die Kopie an seine Stelle.',
          'Ein Training wird gespeichert, während es läuft. Bleibt der Computer stehen, ist das Training beim nächsten Start noch da, als unterbrochen gekennzeichnet.',
          'Ist der Speicher voll, läuft das Training weiter, und die Seite sagt es.',
        ],
      },
    ],
  },
};
