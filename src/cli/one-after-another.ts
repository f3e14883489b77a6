import { type Assessment, assess } from '../audit/assess.ts';
import type { Model } from '../audit/model.ts';
import { largest } from '../files/read.ts';
import { AuditPrinter } from '../report/audit-json.ts';
import { checkSheet } from '../sheet/check.ts';
import { parseSheet } from '../sheet/parse.ts';
import { BadSheet } from '../sheet/problem.ts';
import type { UnitSet } from '../sheet/question.ts';
import { shareAnswers } from '../sheet/share.ts';
import type { Sheet } from '../sheet/sheet.ts';

const tooLong = new BadSheet([{ path: 'sheet', found: 'a line of more than 16 MB', accepted: 'one sheet a line' }]);

/**
 * Audits sheet after sheet. They are often variants of one build: what a sheet has in common with the one before is not
 * worked out, worded and printed again. The audits are those that each sheet would get alone.
 */
export class OneAfterAnother {
	private readonly model: Model;
	private readonly options: { readonly tool: string; readonly units?: UnitSet | undefined };
	private readonly printer = new AuditPrinter();
	private sheet: Sheet | null = null;
	/** The latest in each unit set. */
	private readonly before: Record<UnitSet, Assessment | null> = { us: null, metric: null };

	constructor(model: Model, options: OneAfterAnother['options']) {
		this.model = model;
		this.options = options;
	}

	/** The audit of a sheet's text as JSON in pieces, without draws. Throws a BadSheet. */
	audit(text: string, date: string): string[] {
		if (text.length > largest) throw tooLong;
		const data = parseSheet(text);
		if (this.sheet) shareAnswers(this.sheet, data);
		const checked = checkSheet(data, this.model.rulebook.questions);
		this.sheet = checked.sheet;
		const { tool, units = checked.sheet.units } = this.options;
		const assessment = assess(this.model, checked, { date, units, tool, draws: 0 }, this.before[units]);
		this.before[units] = assessment;
		return this.printer.print(assessment.audit);
	}
}
