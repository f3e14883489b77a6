import { Ajv2020 } from 'ajv/dist/2020.js';
import { describe, expect, test } from 'vitest';
import type { Audit } from '../../src/audit/audit.ts';
import { compare } from '../../src/audit/compare.ts';
import { recordOf } from '../../src/audit/record.ts';
import { auditSchema } from '../../src/report/audit-schema.ts';
import { renderAudit } from '../../src/report/render.ts';
import { emptySheet } from '../../src/sheet/sheet.ts';
import { audited, brokenBuild, thirdOf } from '../support/audited.ts';
import { runCommand } from '../support/command.ts';
import { buildSheet } from '../support/model.ts';

const validate = new Ajv2020({ strict: true, allowUnionTypes: true }).compile(auditSchema);
const broken = audited(brokenBuild(), { draws: 20 });
const since = compare(recordOf(audited(buildSheet('boosted'))), broken);
const rechecked = { ...broken, audit: { ...broken.audit, since } };

describe('the JSON Schema of an audit', () => {
	test.each([
		['a broken build with draws, since the last time', rechecked],
		['a third of the answers', audited(thirdOf(brokenBuild()), { next: true })],
		['nothing answered', audited(emptySheet('nothing'))],
		['an unboosted build', audited(buildSheet('unboosted'))],
	])('fits %s', (_, assessment) => {
		validate(JSON.parse(renderAudit(assessment, 'json', '').text));
		expect(validate.errors).toBeNull();
	});

	test('names every key that an audit has', () => {
		const unnamed: string[] = [];
		walk(auditSchema, JSON.parse(JSON.stringify(rechecked.audit)), 'audit', unnamed);
		expect([...new Set(unnamed)]).toEqual([]);
	});

	test.each([
		['another version', (audit: Audit) => ({ ...audit, version: 2 })],
		['a key that is gone', ({ readings: _, ...audit }: Audit) => audit],
		[
			'a verdict of another name',
			(audit: Audit) => ({ ...audit, findings: [{ ...audit.findings[0], verdict: 'passes' }] }),
		],
		['a rung without its unit', (audit: Audit) => ({ ...audit, limits: [{ ...audit.limits[0], unit: undefined }] })],
	])('refuses %s', (_, spoil) => {
		expect(validate(JSON.parse(JSON.stringify(spoil(broken.audit))))).toBe(false);
	});

	test('is printed by the command', () => {
		const { status, out } = runCommand(['audit', '--schema']);
		expect(status).toBe(0);
		expect(JSON.parse(out)).toEqual(JSON.parse(JSON.stringify(auditSchema)));
	});
});

interface Schema {
	readonly properties?: Readonly<Record<string, Schema>>;
	readonly additionalProperties?: Schema;
	readonly items?: Schema;
	readonly anyOf?: readonly Schema[];
}

/** Collects the keys of a value that its schema does not name. */
function walk(schema: Schema, value: unknown, path: string, unnamed: string[]): void {
	const own = schema.anyOf?.find(({ properties }) => properties) ?? schema;
	if (Array.isArray(value)) {
		for (const item of value) walk(own.items ?? {}, item, `${path}[]`, unnamed);
		return;
	}
	if (value === null || typeof value !== 'object' || (!own.properties && !own.additionalProperties)) return;
	for (const [key, inside] of Object.entries(value)) {
		const inner = own.properties?.[key] ?? own.additionalProperties;
		if (!inner) unnamed.push(`${path}.${key}`);
		else walk(inner, inside, `${path}.${own.properties ? key : '*'}`, unnamed);
	}
}
