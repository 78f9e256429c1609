/** Every edit but those of entered values, and what takes a step back: provided to `apply.ts` by importing it. */
import { findPlanProblems, findProblems } from '../consistency';
import { workbookSchema, type Workbook } from '../schema';
import { shown } from '../shown';
import { editCalibration } from './calibrations';
import { noteChange } from './change-notes';
import { edited, refused, type Edit } from './command';
import { editFrozen } from './frozen';
import { editMember } from './members';
import { editProgramme } from './programmes';
import { editQuantity } from './quantities';
import { editQuote } from './quotes';
import { shapeRefusal } from './refusal';
import { editScenario } from './scenarios';
import { editSet } from './sets';
import { editSheet } from './sheets';
import { provideStructural, type StructuralCommand } from './structural';
import { editStudy } from './studies';
import { editTable } from './tables';
import { setTicks } from './ticks';

provideStructural({ edit, findProblems, findPlanProblems });

function edit(workbook: Workbook, command: StructuralCommand): Edit {
	switch (command.kind) {
		case 'add_quantity':
		case 'replace_quantity':
		case 'remove_quantity':
		case 'move_quantity':
			return editQuantity(workbook, command);
		case 'add_sheet':
		case 'rename_sheet':
		case 'remove_sheet':
		case 'move_sheet':
			return editSheet(workbook, command);
		case 'add_set':
		case 'describe_set':
		case 'remove_set':
			return editSet(workbook, command);
		case 'add_member':
		case 'remove_member':
		case 'replace_member':
		case 'move_member':
		case 'set_relation_pair':
			return editMember(workbook, command);
		case 'add_scenario':
		case 'replace_scenario':
		case 'remove_scenario':
		case 'move_scenario':
		case 'promote_scenario':
		case 'quote_on':
			return editScenario(workbook, command);
		case 'put_study':
		case 'remove_study':
		case 'set_ran':
			return editStudy(workbook, command);
		case 'put_programme':
		case 'remove_programme':
		case 'set_plans':
			return editProgramme(workbook, command);
		case 'put_table':
		case 'remove_table':
			return editTable(workbook, command);
		case 'put_calibration':
		case 'remove_calibration':
			return editCalibration(workbook, command);
		case 'add_frozen':
		case 'describe_frozen':
		case 'remove_frozen':
			return editFrozen(workbook, command);
		case 'put_quote':
		case 'remove_quote':
		case 'set_letterhead':
			return editQuote(workbook, command);
		case 'note_change':
			return noteChange(workbook, command);
		case 'set_ticks':
			return setTicks(workbook, command);
		case 'set_title': {
			const { title } = command;
			const bad = shapeRefusal(workbookSchema.shape.title, title, "The workbook's title");
			return bad ?? edited({ ...workbook, title });
		}
		case 'set_about': {
			const { about: _about, ...rest } = workbook;
			const bad = shapeRefusal(workbookSchema.shape.about, command.about, 'The description');
			if (bad) return bad;
			return edited(command.about === undefined ? rest : { ...workbook, about: command.about });
		}
		case 'set_invented': {
			const { invented, ...rest } = workbook;
			if ((invented ?? false) === command.invented) return edited(workbook);
			return edited(command.invented ? { ...workbook, invented: true } : rest);
		}
		default:
			return unknownCommand(command);
	}
}

/** What a browser kept may come from a newer version, with commands that this one does not know. */
function unknownCommand(command: never): Edit {
	const { kind } = command as { readonly kind?: unknown };
	const named = kind === undefined ? '' : ` of the kind "${shown(String(kind))}"`;
	return refused(
		'unknown-command',
		`There is no edit${named} in this version. Update the app, then try again.`
	);
}
