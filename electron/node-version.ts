// First import of every entry script: what follows needs Node 24, and an older one ends in a crash without a word.
if (Number(process.versions.node.split('.')[0]) < 24) {
  process.stderr.write(
    `Crownwheel needs Node 24 or newer and this is ${process.version}: install Node 24 from nodejs.org, then start again.\n`,
  );
  process.exit(2);
}
