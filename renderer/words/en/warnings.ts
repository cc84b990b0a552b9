/** What the start found about where the shop is kept: what it is, and what now. */
export const warnings = {
  'synced-folder':
    'The shop stands in a folder that is synchronised ({sign}). Two machines writing there would damage it: keep it in a folder of this machine and take copies away instead.',
  'network-folder':
    'The shop stands on a network drive ({sign}). A database is not safe there: keep it on a disk of this machine.',
  'commits-lost':
    'Something is lost. {lost} changes were answered as saved and are not in the shop’s file: it ends at number {last} of {noted} in the trail. Compare with the papers and with the newest copy.',
  'other-file':
    'The shop’s file is not the one that was here last, or was altered behind the program’s back: number {noted} of the trail differs. Look under Shop, Copies and trust, and check everything.',
  'no-ballast': 'The disk is all but full. Make room soon: work cannot be saved on a full disk.',
  seen: 'Seen',
} as const;
