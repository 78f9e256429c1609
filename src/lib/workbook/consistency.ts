/**
 * What the shape of a workbook cannot say: that every name it uses exists and means one thing, and that
 * every value stands where a value belongs. Formulas are not read here; the engine proves them.
 *
 * The checks stand in `consistency/`, one file for each part of a workbook.
 */
import { checkCalibrations } from './consistency/calibrations';
import { Findings, type WorkbookProblem } from './consistency/findings';
import { checkFront, checkPictures, checkStarts } from './consistency/front';
import { checkNames } from './consistency/names';
import { checkProgrammes } from './consistency/programmes';
import { checkQuantities } from './consistency/quantities';
import { checkQuotes } from './consistency/quotes';
import { checkScenarios } from './consistency/scenarios';
import { checkRelations, checkSets } from './consistency/sets';
import { checkStudies } from './consistency/studies';
import { checkTables } from './consistency/tables';
import { checkUnitDefinitions } from './consistency/units-and-sets';
import type { Workbook } from './schema';

/** In the order in which a person would mend them; none in a sound workbook. */
export function findProblems(workbook: Workbook): WorkbookProblem[] {
	return found(workbook, checkEverything);
}

/** As far as a plan can be at fault that is put into a workbook: it changes nothing else. */
export const findPlanProblems = (workbook: Workbook): WorkbookProblem[] =>
	found(workbook, checkProgrammes);

function found(workbook: Workbook, check: (findings: Findings) => void): WorkbookProblem[] {
	const findings = new Findings(workbook);
	check(findings);
	return findings.problems;
}

function checkEverything(findings: Findings): void {
	checkNames(findings);
	const units = checkUnitDefinitions(findings);
	checkSets(findings, units);
	checkRelations(findings);
	checkQuantities(findings, units);
	checkScenarios(findings);
	checkFront(findings);
	checkPictures(findings);
	checkStudies(findings);
	checkStarts(findings);
	checkProgrammes(findings);
	checkTables(findings);
	checkCalibrations(findings);
	checkQuotes(findings);
}
