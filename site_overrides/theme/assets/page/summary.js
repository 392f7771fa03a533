/* An answer as plain text, put together from the words that Python made. */

const band = ({ band: words }) => (words ? ` (band ${words})` : "");
const source = (part) => [part.source, part.how_sure].filter(Boolean).join(", ");

export function answerText(answer, address) {
  const lines = [`${answer.title} (${answer.rules_name})`, ""];
  for (const caution of answer.cautions) lines.push(`${caution.signal}: ${caution.text}`);
  if (answer.cautions.length) lines.push("");
  for (const result of Object.values(answer.results)) {
    lines.push(`${result.label}: ${result.text}${band(result)}`, `    ${source(result)}`);
  }
  lines.push("");
  for (const [name, taken] of Object.entries(answer.inputs)) {
    lines.push(`from ${taken.label}: ${taken.text}${answer.assumed.includes(name) ? " (assumed)" : ""}`);
  }
  lines.push("");
  for (const each of answer.sources) lines.push(`Source ${each.short}: ${each.title}`);
  lines.push(`Release ${answer.release}. Your outfit's instructions and your local rules come first.`, address);
  return lines.join("\n");
}
