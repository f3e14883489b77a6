import type { ColumnChoices } from '../log/column-mapping.ts';
import type { UnitSet } from '../sheet/question.ts';
import type { Sheet } from '../sheet/sheet.ts';

/** What the reducer asks of its host; done after the key that asked, in order. */
export type Effect =
	| { readonly do: 'save'; readonly sheet: Sheet }
	/** `since`: the audit in the sheet to compare with, counted from 1. */
	| { readonly do: 'write-audit'; readonly sheet: Sheet; readonly since: number | null }
	/** `log`: to read a log of it. */
	| { readonly do: 'open'; readonly path: string; readonly log?: true }
	/** Paths that begin as typed. */
	| { readonly do: 'offer-paths'; readonly begun: string }
	/** The beginning of a log, and a whole one: what comes of it comes later. */
	| { readonly do: 'look-at-log'; readonly path: string; readonly choices: ColumnChoices }
	| { readonly do: 'judge-log'; readonly path: string; readonly choices: ColumnChoices; readonly sheet: Sheet }
	| { readonly do: 'stop-log' }
	/** The log that is fitted to goes on without the fit. */
	| { readonly do: 'skip-fit' }
	/** Fits the model to the logs of a sheet, for its audit. */
	| { readonly do: 'fit'; readonly sheet: Sheet }
	| { readonly do: 'create'; readonly name: string; readonly units: UnitSet }
	/** Stops the program until the shell goes on with it. */
	| { readonly do: 'suspend' }
	| { readonly do: 'quit' };
