// The small lines below a field that say what it asks, in which unit and what it is for, in English; help-de.ts must hold
// the same keys. A field of the register or of an entry shows its line when there is one; plain fields have none.

export const helpEn = {
  'help.register.speciesId': 'Its needs, its meals and its quarantine are looked up by this. Unsure? Ask first.',
  'help.register.callName': 'What it is called at the counter, or its number in the rack. Best not given twice.',
  'help.register.sex':
    'As practised hands found it. A guess is “asked, not known”: the buyer is told what stands here.',
  'help.register.hatched': 'The day from the breeder’s papers. It counts as the day of arrival when none is given.',
  'help.register.supplierName':
    'Person or firm it came from, in full: some laws ask for it. Bred here: the shop itself.',
  'help.register.supplierContact': 'Address, telephone or mail, so that a vet or an inspector can ask back.',
  'help.register.originCountry':
    'Where it was bred or caught, not where it was bought. Some laws want it told to the buyer.',
  'help.register.acquiredOn': 'The day it came into this building. Days of settling in are counted from it.',
  'help.register.bred': 'Farmed: taken from the wild as egg or young and reared. Papers silent? “Asked, not known”.',
  'help.register.chipNumber': 'All digits, as the reading device shows them.',
  'help.register.otherMark': 'What tells it from its like without a chip: a scar, a break in the pattern.',
  'help.register.paperKind':
    'For instance the certificate of a protected species, or the breeder’s word of lawful origin.',
  'help.register.paperNumber': 'As printed on it, so that the paper is found again.',
  'help.register.colourForm': 'As its breeder calls it. Nothing is computed from it; it stands on the pack.',
  'help.register.reason': 'The inspector reads it beside what stood before. What stood is never struck out.',
  'help.register.find': 'Part of a word is enough. The pages and the table below hold what is found.',

  'help.takeIn.enclosure': 'As it is written on it. The daily round goes by it.',
  'help.takeIn.quarantine': 'Until somebody ends it the animal is held. The usual days can be changed on its sheet.',

  'help.entry.on': 'The day it happened, not the day it is written down.',
  'help.entry.amendOn': 'The day it happened. Changed here, the old day stays to be read.',
  'help.entry.amendWhy': 'One sentence; it is read beside the old entry, which stays, struck through.',
  'help.entry.weighing.massG':
    'Before a meal, without box or bag. Its meals, and whether it may go, are judged by this.',
  'help.entry.feeding.outcome':
    'Brought up means swallowed and lost again: then comes a rest, and half a meal after it.',
  'help.entry.slough.stage': 'Each on its own day. Skin in pieces holds the animal: look at the eyes and the tail tip.',
  'help.entry.mites.seen': '“No” is worth writing too. A find begins the watch anew, and holds the animal.',
  'help.entry.mites.where': 'For instance at the chin, round the eyes, in the water, on your hands.',
  'help.entry.length.totalLengthCm': 'Nose to tail tip, along the back. Never stretch it. Its box is judged by this.',
  'help.entry.movement.toPlace': 'As it is written on the enclosure. The daily round goes by it.',
  'help.entry.treatment.step': 'From “begins” to “ends” the animal is held.',
  'help.entry.treatment.what': 'Word for word from the vet’s note. The program knows no drug and checks no dose.',
  'help.entry.treatment.vet': 'Name or practice, so that the next person can ask back.',
  'help.entry.quarantine.clearBy': 'What must be fulfilled before somebody may end it; it never ends by itself.',
  'help.entry.quarantine.days': 'Counted from the day above.',
  'help.entry.quarantine.where': 'Room or rack apart from the others, as you call it.',
  'help.entry.quarantine.tests': 'By the names under which the results will be written: each waits for a “clear”.',
  'help.entry.test.name': 'As the quarantine names it; under another name it does not count there.',
  'help.entry.test.result': 'As the vet or the laboratory says. The latest under a name counts.',
  'help.entry.rest.step': 'While it rests a loss of mass is expected, and is not judged as illness.',
  'help.entry.sale.reference':
    'Leads back to your till. The buyer’s own words belong on the placement, where they can be erased.',
  'help.entry.escape.gap': 'Where it got out. The next animal takes the same way.',
  'help.entry.escape.told': 'Neighbours, council or police, where they must know.',
  'help.entry.death.signs': 'What was seen, and when. No guess at a cause.',
  'help.entry.death.carcass': 'For instance to the vet, to a laboratory, to disposal; some inspectors ask.',

  'help.look.mass': 'Without box or bag. Leave it empty rather than guess: it joins the masses that judge the animal.',
  'help.look.note': 'What no step asked for, and what to look at next time. No names of people.',
  'help.look.outline': 'Each drawing is a cut through the middle of the body. The nearest is enough.',

  'help.role.assistant': 'Works at the counter. Overrides nothing, and sees neither people nor their changes.',
  'help.role.manager': 'Also overrides with a reason, sets shop values, erases what is due, and sees to assistants.',
  'help.role.inspector': 'Reads the register and the animals. Changes nothing.',
  'help.role.owner': 'Everything, also managers, owners and branches.',
  'help.acc.personName': 'As the others know them. It is written beside everything they do.',
  'help.acc.branch': 'Where this person works. With “every branch” it is chosen on the own account.',
  'help.acc.place': 'Law, licences and register are judged by this place. Unsure? Your council knows.',
  'help.acc.shopName': 'It stands on the sheets and papers of the shop.',
  'help.acc.pin': 'Not in a row, not all the same, and nobody else’s to know.',
  'help.acc.passkey': 'For instance the device it lies on, so that the right one is removed when it is lost.',

  'help.own.value': 'For this shop, from now on. What was kept before stays as it was judged.',
  'help.own.span': 'Both ends, in this unit. For this shop, from now on; what was kept before stays as it was judged.',
  'help.own.why':
    'One sentence a customer understands. It stands with your name and the day wherever the value is used.',
  'help.own.standard': 'The floor and height asked for where nobody names another standard.',
  'help.own.policy': 'Absolute: nobody lets an animal go without it. Else a manager may, with a printed reason.',
  'help.own.policyWhy': 'One sentence; it stays beside the rule with your name and the day.',

  'help.aftercare.on': 'The day it was so at the keeper’s home, not the day of the call.',
  'help.aftercare.why': 'The next person reads it. It can be taken back under “Told so far”.',
  'help.aftercare.readings': 'As the instrument shows them now. Leave empty what was not read; never from memory.',
  'help.aftercare.length': 'The animal, nose to tail tip, never stretched. It counts as an estimate.',
  'help.aftercare.massG': 'Before a meal, without box or bag. A kitchen scale will do if it weighs small things well.',
  'help.aftercare.droppings': 'Wrong is what this keeper has not seen from it before: another colour, blood, very wet.',
  'help.aftercare.mealOn': 'The day it was offered. The next meal is counted from it.',
  'help.aftercare.fitted': 'The day the new one began to run. Its hours are counted from it.',
} as const;
