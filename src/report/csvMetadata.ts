// What goes beside a CSV file: its description after the W3C's 'Metadata Vocabulary for Tabular Data' (17 Dec 2015).

import type { Result } from "../checks/index.ts";
import type { Plan } from "../plan/index.ts";
import { type Column, columnsOf } from "./columns.ts";
import { originOf } from "./origin.ts";

/** The file name that the recommendation (section 5.3) looks for beside `file`. */
export function metadataNameOf(file: string): string {
  return `${file}-metadata.json`;
}

/** Datatypes of the recommendation (section 5.11.1). */
const datatypes: Record<Column["kind"], string> = {
  text: "string",
  "user text": "string",
  integer: "integer",
  number: "decimal",
  ratio: "double",
};

/** Metadata of the file of `reactionsCsv`, as JSON text. `url` is the CSV's own file name. */
export function csvMetadata(result: Result, plan: Plan, url: string, withSpread = false): string {
  const origin = originOf(result, plan);
  const about = {
    "@context": ["http://www.w3.org/ns/csvw", { "@language": "en" }],
    url,
    "dc:title": `Reactions of ${origin.title === "" ? "a plan without a title" : origin.title}`,
    "dc:description":
      "A row for every set, step, stored pose and support. In a pose, the loads of the rows whose column 'band' says yes carry the set and its decks; all other rows tell how they do so.",
    "dc:identifier": origin.planHash,
    "dc:hasVersion": origin.revision,
    "dc:creator": `Handspan ${origin.solverVersion}`,
    "dc:rights": origin.caution,
    dialect: {
      commentPrefix: null,
      encoding: "utf-8",
      delimiter: ",",
      doubleQuote: true,
      header: true,
      headerRowCount: 1,
      lineTerminators: ["\r\n"],
      quoteChar: '"',
      trim: false,
    },
    tableSchema: {
      columns: columnsOf(withSpread).map((column) => ({
        name: column.name,
        titles: column.name,
        datatype: datatypes[column.kind],
        "dc:title": column.title,
        "dc:description": column.about,
        ...(column.unit === "" ? {} : { "schema:unitText": column.unit }),
      })),
      primaryKey: ["set", "pose", "support"],
    },
  };
  return `${JSON.stringify(about, null, 2)}\n`;
}
