export type MessageAbout = 'ready' | 'found' | 'partLate' | 'reminder';

interface MessageWords {
  readonly subject: Readonly<Record<MessageAbout, string>>;
  readonly text: Readonly<Record<MessageAbout, string>>;
}

/** The program's own wording, where the shop has none. Names in braces are figures. */
export const MESSAGE_WORDS: Readonly<Record<'en' | 'de', MessageWords>> = {
  en: {
    subject: {
      ready: '{plate} is ready',
      found: '{plate}: we found something and need your word',
      partLate: '{plate}: a part is late',
      reminder: '{plate}: {what}',
    },
    text: {
      ready:
        'Hello {name},\n\nYour {car}, {plate}, is ready. The work comes to {sum}; {open} is still to pay. We are here from {opens} to {closes}.\n\n{garage}, {phone}',
      found:
        'Hello {name},\n\nOn your {car}, {plate}, we found:\n{jobs}\nWith it the work comes to {sum}, {more} more than you said yes to. We do nothing of it before you say yes. Please ring us or answer.\n\n{garage}, {phone}',
      partLate:
        'Hello {name},\n\nFor your {car}, {plate}, {part} is late. It is now due on {due}. We tell you when your car can be fetched.\n\n{garage}, {phone}',
      reminder:
        'Hello {name},\n\nOn your {car}, {plate}, this comes up: {what}. We expect it around {due}. Ring us for a day that suits you. If you do not want to be asked again, tell us and we stop.\n\n{garage}, {phone}',
    },
  },
  de: {
    subject: {
      ready: '{plate} ist fertig',
      found: '{plate}: Wir haben etwas gefunden und brauchen Ihr Ja',
      partLate: '{plate}: Ein Teil kommt später',
      reminder: '{plate}: {what}',
    },
    text: {
      ready:
        'Guten Tag {name},\n\nIhr {car}, {plate}, ist fertig. Die Arbeit kostet {sum}; offen sind noch {open}. Wir sind von {opens} bis {closes} da.\n\n{garage}, {phone}',
      found:
        'Guten Tag {name},\n\nan Ihrem {car}, {plate}, haben wir gefunden:\n{jobs}\nDamit kostet die Arbeit {sum}, das sind {more} mehr, als Sie zugesagt haben. Ohne Ihr Ja machen wir davon nichts. Bitte rufen Sie uns an oder antworten Sie.\n\n{garage}, {phone}',
      partLate:
        'Guten Tag {name},\n\nfür Ihren {car}, {plate}, kommt {part} später, nun am {due}. Wir sagen Ihnen, wann Sie den Wagen holen können.\n\n{garage}, {phone}',
      reminder:
        'Guten Tag {name},\n\nan Ihrem {car}, {plate}, steht an: {what}. Wir rechnen damit um den {due}. Rufen Sie uns an, wann es Ihnen passt. Wenn Sie nicht mehr gefragt werden möchten, sagen Sie es uns, dann hören wir auf.\n\n{garage}, {phone}',
    },
  },
};

/** What a reminder that the program makes by itself is called, in the shop's own language. */
export const REMINDER_WORDS: Readonly<
  Record<'en' | 'de', { readonly wheels: string; readonly warranty: (order: number) => string }>
> = {
  en: {
    wheels: 'Tighten the wheels again',
    warranty: (order) => `The warranty on the work of order ${order} ends`,
  },
  de: {
    wheels: 'Räder nachziehen',
    warranty: (order) => `Die Gewährleistung für die Arbeit von Auftrag ${order} endet`,
  },
};
