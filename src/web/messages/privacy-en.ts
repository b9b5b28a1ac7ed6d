// Words of what is kept of a buyer, in English.

export const privacyEn = {
  'privacy.title': 'What is kept of the buyer',
  'privacy.lead':
    'Label, statements, reasons, notes from calls and aftercare, names of files: all that was written in own words.',
  'privacy.show': 'Show what is kept',
  'privacy.none': 'Nothing in own words is kept.',
  'privacy.save': 'Save everything as a file (JSON)',
  'privacy.part.enquiry': 'Enquiry',
  'privacy.part.plans': 'Plan',
  'privacy.part.proofs': 'Proof',
  'privacy.part.placements': 'Placement',
  'privacy.part.events': 'Placement',
  'privacy.part.calls': 'Call',
  'privacy.part.handReadings': 'Reading by hand',
  'privacy.part.readingFiles': 'Logger file',
  'privacy.part.liveSources': 'Live source',
  'privacy.part.packs': 'Pack',
  'privacy.part.keeperLinks': 'Keeper’s link',
  'privacy.erase': 'Erase the buyer',
  'privacy.warning':
    'This cannot be undone. Own words and links go from every placement of this home, and nothing more can be written to it. The animal’s record and the numbers of the home stay, and the contents of logger files.',
  'privacy.beyond':
    'Not reached from here: earlier backups, printed sheets, drafts on other devices, entries in the animal’s register other than calls.',
  'privacy.open': 'Release the animal or refuse the sale first; then the buyer can be erased.',
  'privacy.reason': 'Why (at least {n} letters; kept, so without the person’s name)',
  'privacy.sure': 'I have given the buyer what they asked for, or they want nothing.',
  'privacy.do': 'Erase for good',
  'privacy.done': 'The buyer’s own words were erased on {on} by {by}: {reason}',
  'privacy.due.title': 'Enquiries due to be erased',
  'privacy.due.lead':
    'No animal was placed, and nothing changed for {n} days (our choice; no law that was read gives a number): {count}.',
  'privacy.due.none':
    'No enquiry is due: those without a placement are kept {n} days after their last change (our choice).',
  'privacy.due.warning': 'This cannot be undone. Their labels and notes go, the numbers stay.',
  'privacy.due.do': 'Erase all in this list',
  'privacy.due.unnamed': 'without a label',
};
