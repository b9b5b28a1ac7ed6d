// The few words of a calendar that are no task, in every language.
export const calendarWords = {
  en: {
    deskName: 'Aftercare',
    keeperName: 'Your snake: what is due',
    until: 'Until {day} at the latest.',
    done: 'Done',
    'set-aside': 'Not needed',
  },
  de: {
    deskName: 'Nachsorge',
    keeperName: 'Ihre Schlange: was ansteht',
    until: 'Spätestens bis {day}.',
    done: 'Erledigt',
    'set-aside': 'Nicht nötig',
  },
};
