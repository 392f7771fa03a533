/* What Python refused, beside the fields that it names. */

/* Errors of untouched fields wait for Calculate; what names no field is given back. */
export function showErrors(fields, errors, all) {
  for (const field of fields) field.setError("");
  const elsewhere = [];
  let first = null;
  for (const { field: name, message } of errors) {
    const field = fields.find((each) => each.name === name);
    if (!field) elsewhere.push(message);
    else if (all || field.touched || field.sent()) {
      field.setError(message);
      first ??= field;
    }
  }
  if (all) first?.box.focus();
  return { elsewhere, first };
}

/* One sentence for the status line: the first error shown, else what is wrong. */
export function errorWords({ elsewhere, first }, errors) {
  if (elsewhere.length) return elsewhere[0];
  const shown = first && errors.find(({ field }) => field === first.name);
  return shown ? `No answer. ${shown.message}` : "No answer yet: values are missing.";
}
