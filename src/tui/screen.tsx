import { Box, Text } from 'ink';
import SelectInput from 'ink-select-input';
import { useEffect, useSyncExternalStore } from 'react';
import { type Cut, cutTo } from './frame.ts';
import { frameOf } from './reduce.ts';
import type { Store } from './store.ts';
import type { Line } from './text.ts';
import { theme } from './theme.ts';

/** Draws the store's app, a row lower than the window. `ready` is called once the first frame stands. */
export function Screen({ store, ready }: { readonly store: Store; readonly ready: () => void }) {
	const { app, columns, rows } = useSyncExternalStore(store.subscribe, store.read);
	useEffect(() => {
		ready();
	}, [ready]);
	const cut = cutTo(frameOf(app, columns - 1), rows);
	return (
		<Box flexDirection="column" width={columns}>
			<Lines lines={cut.gap ? [...cut.top, empty] : cut.top} />
			{cut.rows && <List cut={cut} rows={cut.rows} />}
			<Lines lines={[...(cut.gap && cut.rows ? [empty] : []), ...cut.bottom, ...cut.panel, ...cut.footer]} />
		</Box>
	);
}

const empty: Line = { text: '', look: 'plain' };

function Lines({ lines }: { readonly lines: readonly Line[] }) {
	return lines.map(({ text, look }, index) => (
		// biome-ignore lint/suspicious/noArrayIndexKey: lines have no identity but their place
		<Text key={index} wrap="truncate" {...theme[look]}>
			{text === '' ? ' ' : text}
		</Text>
	));
}

/** The rows in sight. The list's own keys are off: the reducer moves the cursor, so that no key is ever lost between two frames. */
function List({ cut, rows }: { readonly cut: Cut; readonly rows: NonNullable<Cut['rows']> }) {
	const items = rows.items
		.slice(cut.from, cut.from + cut.shown)
		.map((text, index) => ({ label: text, value: cut.from + index, key: String(cut.from + index) }));
	return (
		<SelectInput
			key={`${cut.from}:${rows.cursor}`}
			items={items}
			initialIndex={rows.cursor - cut.from}
			isFocused={false}
			indicatorComponent={Mark}
			itemComponent={Row}
		/>
	);
}

function Mark({ isSelected = false }: { readonly isSelected?: boolean }) {
	return <Text bold={isSelected}>{isSelected ? '> ' : '  '}</Text>;
}

function Row({ isSelected = false, label }: { readonly isSelected?: boolean; readonly label: string }) {
	return (
		<Text bold={isSelected} wrap="truncate">
			{label}
		</Text>
	);
}
