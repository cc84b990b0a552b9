/** What the command line can do. */
export const HELP = `Crownwheel, the shop from the command line.

  npm run shop -- call OPERATION JSON      call one operation
      --as NAME        who calls, by name or id
      --at INSTANT     epoch milliseconds, in a practice shop only
      --request ID     UUIDv7: the same request twice is applied once
      OPERATION JSON may be "-" to read the JSON from standard input
  npm run shop -- call --batch FILE.jsonl  one call a line: {operation, input, as, at, request}
      Every line is answered in order, with its number. A line that is refused or is no call does not stop the rest,
      and each line is a change of its own: what was answered as done stays done.
      --stop           stop at the first refusal
      FILE.jsonl may be "-" to read the lines from standard input; the code then comes from SHOP_CODE
  npm run shop -- contract                 every operation as JSON Schema
  npm run shop -- verify [--as NAME]       walk the trail and add everything up again; ends with 1 where something does not agree
      --papers         also make every paper again and compare it with its file
  npm run shop -- backup [TO]              a checked copy into the shop's backups, or into the folder TO with its papers
  npm run shop -- restore FROM             put a copy in place; the shop as it was is kept beside it
      --last-invoice NUMBER   the last invoice number that stands on paper: the next one will be above it
  npm run shop -- import FILE [--as NAME]  bring customers, cars and past visits in from a CSV file; what is here already stays
      --try            only say what it would bring, and which lines cannot be read
      --columns LIST   what each column holds, in the file's order, parted by commas; an empty one is left out
      --dates ORDER    how the file writes days: ymd, dmy or mdy
      --decimal MARK   what parts the decimals of its sums: . or ,
  npm run shop -- export KIND [FILE]       customers, cars, visits or orders as CSV

Everywhere:
  --shop FOLDER    the shop's folder; else CROWNWHEEL_SHOP, else the usual place
  --practice       with shop.setUp: a practice shop, for learning and for scripts
  --help           this text

The code of the person comes from SHOP_CODE or from standard input, never from the command line: one code, or for
several people one line each, NAME=CODE. Where a window holds the shop, the call is passed on to it.
Answers are JSON, one line each, on standard output; sentences are on standard error.
Exit code 0: done. 1: the shop said no. 2: the command itself was wrong or the shop could not be opened.
`;
