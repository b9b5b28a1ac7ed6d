// Die kleinen Zeilen unter einem Feld auf Deutsch: dieselben Schlüssel wie help-en.ts.
import type { helpEn } from './help-en.ts';

export const helpDe: Readonly<Record<keyof typeof helpEn, string>> = {
  'help.register.speciesId': 'Danach werden Bedürfnisse, Futter und Quarantäne nachgeschlagen. Unsicher? Erst fragen.',
  'help.register.callName': 'Wie es am Tresen heißt, oder seine Nummer im Regal. Am besten nicht zweimal vergeben.',
  'help.register.sex':
    'Wie geübte Hände es fanden. Geraten heißt „gefragt, nicht bekannt“: Was hier steht, erfährt der Käufer.',
  'help.register.hatched':
    'Der Tag aus den Papieren des Züchters. Er gilt als Tag des Zugangs, wenn keiner genannt ist.',
  'help.register.supplierName':
    'Person oder Firma, von der es kam, mit vollem Namen: Manche Gesetze verlangen ihn. Hier gezüchtet: der Laden selbst.',
  'help.register.supplierContact': 'Anschrift, Telefon oder E-Mail, damit Tierarzt oder Prüfung nachfragen können.',
  'help.register.originCountry':
    'Wo es gezüchtet oder gefangen wurde, nicht wo gekauft. Manche Gesetze wollen, dass der Käufer es erfährt.',
  'help.register.acquiredOn': 'Der Tag, an dem es in dieses Haus kam. Ab ihm zählen die Tage der Eingewöhnung.',
  'help.register.bred':
    'Farmzucht: als Ei oder Jungtier der Natur entnommen und aufgezogen. Papiere sagen nichts? „Gefragt, nicht bekannt“.',
  'help.register.chipNumber': 'Alle Ziffern, wie das Lesegerät sie zeigt.',
  'help.register.otherMark': 'Woran es ohne Chip zu erkennen ist: eine Narbe, ein Bruch im Muster.',
  'help.register.paperKind':
    'Zum Beispiel die Bescheinigung einer geschützten Art oder der Herkunftsnachweis des Züchters.',
  'help.register.paperNumber': 'Wie sie darauf gedruckt ist, damit das Papier wiedergefunden wird.',
  'help.register.colourForm': 'Wie der Züchter sie nennt. Nichts wird daraus gerechnet; sie steht in der Mappe.',
  'help.register.reason': 'Die Prüfung liest es neben dem, was vorher stand. Was stand, wird nie gestrichen.',
  'help.register.find': 'Ein Teil eines Wortes genügt. Die Seiten und die Tabelle enthalten, was gefunden ist.',

  'help.takeIn.enclosure': 'Wie es daran steht. Die tägliche Runde geht danach.',
  'help.takeIn.quarantine':
    'Bis jemand sie beendet, wird das Tier zurückgehalten. Die üblichen Tage lassen sich auf seinem Blatt ändern.',

  'help.entry.on': 'Der Tag, an dem es geschah, nicht der Tag, an dem es aufgeschrieben wird.',
  'help.entry.amendOn': 'Der Tag, an dem es geschah. Hier geändert, bleibt der alte Tag lesbar.',
  'help.entry.amendWhy': 'Ein Satz; er steht neben dem alten Eintrag, der durchgestrichen bleibt.',
  'help.entry.weighing.massG':
    'Vor dem Füttern, ohne Box oder Beutel. Danach richten sich das Futter und ob es gehen darf.',
  'help.entry.feeding.outcome':
    'Ausgewürgt heißt: geschluckt und wieder verloren. Dann folgt eine Pause, danach ein halbes Futter.',
  'help.entry.slough.stage':
    'Jeder an seinem Tag. Haut in Stücken hält das Tier zurück: Augen und Schwanzspitze ansehen.',
  'help.entry.mites.seen':
    'Auch „nein“ ist es wert, notiert zu werden. Ein Fund beginnt die Wache neu und hält das Tier zurück.',
  'help.entry.mites.where': 'Zum Beispiel am Kinn, um die Augen, im Wasser, an den Händen.',
  'help.entry.length.totalLengthCm':
    'Von der Nase bis zur Schwanzspitze, den Rücken entlang. Nie strecken. Danach wird das Terrarium beurteilt.',
  'help.entry.movement.toPlace': 'Wie es am Terrarium steht. Die tägliche Runde geht danach.',
  'help.entry.treatment.step': 'Von „beginnt“ bis „endet“ wird das Tier zurückgehalten.',
  'help.entry.treatment.what':
    'Wort für Wort vom Zettel des Tierarztes. Das Programm kennt kein Mittel und prüft keine Menge.',
  'help.entry.treatment.vet': 'Name oder Praxis, damit die nächste Person nachfragen kann.',
  'help.entry.quarantine.clearBy': 'Was erfüllt sein muss, bevor jemand sie beenden darf; von selbst endet sie nie.',
  'help.entry.quarantine.days': 'Gezählt vom Tag oben an.',
  'help.entry.quarantine.where': 'Raum oder Regal abseits der anderen, wie Sie es nennen.',
  'help.entry.quarantine.tests':
    'Mit den Namen, unter denen die Ergebnisse notiert werden: Jeder wartet auf ein „frei“.',
  'help.entry.test.name': 'Wie ihn die Quarantäne nennt; unter anderem Namen zählt er dort nicht.',
  'help.entry.test.result': 'Wie Tierarzt oder Labor es sagen. Das jüngste unter einem Namen zählt.',
  'help.entry.rest.step':
    'Solange es ruht, ist ein Verlust an Masse zu erwarten und wird nicht als Krankheit beurteilt.',
  'help.entry.sale.reference':
    'Führt zurück zu Ihrer Kasse. Worte des Käufers gehören zur Vermittlung, wo sie gelöscht werden können.',
  'help.entry.escape.gap': 'Wo es hinauskam. Das nächste Tier nimmt denselben Weg.',
  'help.entry.escape.told': 'Nachbarn, Behörde oder Polizei, wo sie es wissen müssen.',
  'help.entry.death.signs': 'Was gesehen wurde und wann. Keine Vermutung über die Ursache.',
  'help.entry.death.carcass': 'Zum Beispiel zum Tierarzt, ins Labor, zur Beseitigung; manche Prüfung fragt danach.',

  'help.look.mass':
    'Ohne Box oder Beutel. Lieber leer als geraten: Sie kommt zu den Massen, nach denen das Tier beurteilt wird.',
  'help.look.note': 'Wonach kein Schritt fragte, und was nächstes Mal anzusehen ist. Keine Namen von Menschen.',
  'help.look.outline': 'Jede Zeichnung ist ein Schnitt durch die Mitte des Körpers. Die ähnlichste genügt.',

  'help.role.assistant': 'Arbeitet am Tresen. Setzt sich über nichts hinweg und sieht weder Personen noch Änderungen.',
  'help.role.manager':
    'Setzt sich auch mit Begründung hinweg, setzt eigene Werte, löscht, was fällig ist, und betreut die Mitarbeit.',
  'help.role.inspector': 'Liest Register und Tiere. Ändert nichts.',
  'help.role.owner': 'Alles, auch Leitung, Inhaber und Filialen.',
  'help.acc.personName': 'Wie die anderen sie kennen. Er steht neben allem, was sie tun.',
  'help.acc.branch': 'Wo diese Person arbeitet. Bei „jede Filiale“ wird sie im eigenen Konto gewählt.',
  'help.acc.place': 'Recht, Genehmigungen und Register richten sich nach diesem Ort. Unsicher? Die Behörde weiß es.',
  'help.acc.shopName': 'Er steht auf den Blättern und Papieren des Ladens.',
  'help.acc.pin': 'Nicht in einer Reihe, nicht alle gleich, und für niemand anderen.',
  'help.acc.passkey': 'Zum Beispiel das Gerät, auf dem er liegt, damit der richtige entfernt wird, wenn es fehlt.',

  'help.own.value': 'Für diesen Laden, ab jetzt. Was vorher behalten wurde, bleibt, wie es beurteilt war.',
  'help.own.span':
    'Beide Enden, in dieser Einheit. Für diesen Laden, ab jetzt; was vorher behalten wurde, bleibt, wie es beurteilt war.',
  'help.own.why':
    'Ein Satz, den ein Kunde versteht. Er steht mit Ihrem Namen und dem Tag überall, wo der Wert benutzt wird.',
  'help.own.standard': 'Boden und Höhe, die verlangt werden, wo niemand eine andere Vorgabe nennt.',
  'help.own.policy':
    'Unbedingt: Ohne das gibt niemand ein Tier ab. Sonst darf es die Leitung, mit gedruckter Begründung.',
  'help.own.policyWhy': 'Ein Satz; er bleibt mit Ihrem Namen und dem Tag neben der Regel.',

  'help.aftercare.on': 'Der Tag, an dem es beim Halter so war, nicht der Tag des Anrufs.',
  'help.aftercare.why': 'Die nächste Person liest es. Zurückzunehmen unter „Bisher gehört“.',
  'help.aftercare.readings': 'Wie das Gerät sie jetzt zeigt. Nicht Abgelesenes bleibt leer; nie aus dem Gedächtnis.',
  'help.aftercare.length': 'Das Tier, Nase bis Schwanzspitze, nie gestreckt. Es zählt als Schätzung.',
  'help.aftercare.massG': 'Vor dem Füttern, ohne Box oder Beutel. Eine Küchenwaage reicht, wenn sie Kleines gut wiegt.',
  'help.aftercare.droppings':
    'Falsch ist, was dieser Halter bei ihm noch nicht gesehen hat: andere Farbe, Blut, sehr nass.',
  'help.aftercare.mealOn': 'Der Tag, an dem angeboten wurde. Das nächste Futter wird von ihm an gezählt.',
  'help.aftercare.fitted': 'Der Tag, seit dem die neue läuft. Ihre Stunden zählen von ihm an.',
};
