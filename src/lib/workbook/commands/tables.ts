/** Keeping what the columns of tables mean, by name. Nothing that is computed changes. */
import type { KeptLog } from '../log-schema';
import type { Workbook } from '../schema';
import { keptTableSchema, type KeptColumn } from '../table-schema';
import { refused, type Edit, type TableCommand } from './command';
import { inserted, mapped, without } from './lists';
import { withList } from './parts';
import { shapeRefusal } from './refusal';

export function editTable(workbook: Workbook, command: TableCommand): Edit {
	const tables = workbook.tables ?? [];
	const { title } = command;
	const place = title === undefined ? -1 : tables.findIndex((table) => table.title === title);
	if (title !== undefined && place < 0)
		return refused(
			'unknown-table',
			`There is no table kept as "${title}". Choose one of those that the workbook keeps.`
		);
	if (command.kind === 'remove_table') return withList(workbook, 'tables', without(tables, place));
	const { table } = command;
	const bad = shapeRefusal(keptTableSchema, table, 'The table');
	if (bad) return bad;
	const twin = tables.findIndex((other) => other.title === table.title);
	if (twin >= 0 && twin !== place)
		return refused(
			'duplicate-table',
			`There is already a table kept as "${table.title}". Choose another name.`
		);
	const others = place < 0 ? tables : without(tables, place);
	return withList(workbook, 'tables', inserted(others, place < 0 ? tables.length : place, table));
}

interface Renames {
	readonly quantity?: (name: string) => string;
	readonly scenario?: (id: string) => string;
	readonly member?: (set: string, id: string) => string;
}

/** The workbook with what its kept tables mean under new names. */
export function mapTableNames(workbook: Workbook, renames: Renames): Workbook {
	if (!workbook.tables) return workbook;
	const tables = mapped(workbook.tables, (table) => {
		const columns = mapped(table.columns, (column) => renamedColumn(column, renames));
		const quantity = table.quantity && (renames.quantity?.(table.quantity) ?? table.quantity);
		const log = table.log && renamedLog(table.log, renames);
		return columns === table.columns && quantity === table.quantity && log === table.log
			? table
			: { ...table, ...(quantity && { quantity }), columns, ...(log && { log }) };
	});
	return tables === workbook.tables ? workbook : { ...workbook, tables };
}

function renamedColumn(column: KeptColumn, renames: Renames): KeptColumn {
	if (column.is !== 'value') return column;
	const scenario = renames.scenario?.(column.scenario) ?? column.scenario;
	const quantity = column.quantity && (renames.quantity?.(column.quantity) ?? column.quantity);
	const { member } = column;
	const id = member && (renames.member?.(member.of, member.id) ?? member.id);
	if (scenario === column.scenario && quantity === column.quantity && id === member?.id)
		return column;
	return {
		...column,
		scenario,
		...(quantity && { quantity }),
		...(member && id && { member: { ...member, id } })
	};
}

function renamedLog(log: KeptLog, renames: Renames): KeptLog {
	const scenario = renames.scenario?.(log.scenario) ?? log.scenario;
	const sums = mapped(log.sums, (sum) => {
		const quantity = renames.quantity?.(sum.quantity) ?? sum.quantity;
		return quantity === sum.quantity ? sum : { ...sum, quantity };
	});
	const always = mapped(log.always ?? [], (one) => {
		const id = renames.member?.(one.of, one.id) ?? one.id;
		return id === one.id ? one : { ...one, id };
	});
	if (scenario === log.scenario && sums === log.sums && (always === log.always || !log.always))
		return log;
	return { ...log, scenario, ...(log.always && { always }), sums };
}
