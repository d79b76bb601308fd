/**
 * Prints the totals of vitest's JSON report on one line. A file of tests that could not be run counts as a failure.
 * Exit status 0 only if tests ran and none failed.
 */
import { readFileSync } from 'node:fs';

const [file] = process.argv.slice(2);
const { passed, failed, skipped } = countsOf(file);
console.log(`${passed} passed, ${failed} failed${skipped > 0 ? `, ${skipped} skipped` : ''}`);
process.exitCode = failed === 0 && passed > 0 ? 0 : 1;

function countsOf(reportFile) {
  let report;
  try {
    report = JSON.parse(readFileSync(reportFile, 'utf8'));
  } catch (error) {
    console.log(`There is no test report: ${error.message}`);
    return { passed: 0, failed: 1, skipped: 0 };
  }
  const notRun = report.testResults.filter(
    ({ status, assertionResults }) => status === 'failed' && !assertionResults.some((each) => each.status === 'failed'),
  );
  return {
    passed: report.numPassedTests,
    failed: report.numFailedTests + notRun.length,
    skipped: report.numPendingTests + report.numTodoTests,
  };
}
