/** What the comparison of shift patterns says. */
import { inLanguage } from '../../language';

const en = {
	// +page
	noComparisonShiftPatterns: 'No comparison of shift patterns',
	workbookNamesNoSetShift:
		'This workbook names no set of shift patterns to compare. A picture in its file says which quantities per pattern stand side by side.',

	// Patterns
	line: 'Each pattern as if everything worked by it',
	comparedWith: 'Compared with',
	patternComparedWith: 'Pattern compared with',
	addOrRemove: (plural: string) => `Add or remove ${plural}`,

	// ScenarioSides
	scenariosSideBySide: 'Scenarios side by side',
	scenariosLine: 'The same lines as each scenario runs them',
	scenarioComparedWith: 'Scenario compared with',
	scenario: 'Scenario',

	// SideTable
	sideBySide: (name: string) => `${name}, side by side`,
	columnsShown: (shown: number, all: number) => `Columns: ${shown} of ${all}`,
	isComparedWith: 'compared with',
	askWhy: 'Ask why',
	same: 'same',
	differs: 'differs'
};

export const texts = inLanguage({ en });
