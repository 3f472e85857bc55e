// Turns the blanks of a commissioning sheet into fields, keeps what is typed in
// the browser's own storage and makes a record file of it. Nothing leaves the
// machine. Without it the sheet is printed and filled in by hand.
"use strict";
(() => {
  const byId = (id) => document.getElementById(id);
  const top = byId("fill");
  const end = byId("fill-end");
  const says = byId("fill-says");
  const day = byId("fill-date");

  // say is a text of the sheet with what it is about in its places.
  const say = (name, ...about) => top.dataset["say" + name].replace(/%(\d)/g, (all, n) => about[n - 1] ?? all);

  // What the browser keeps: of each field its text, a number with its unit.
  const load = () => {
    try {
      const all = JSON.parse(localStorage.getItem(top.dataset.key));
      return all !== null && typeof all === "object" && !Array.isArray(all) ? all : {};
    } catch {
      return {};
    }
  };
  const keep = (name, text) => {
    try {
      const all = load();
      all[name] = text;
      if (text === "") delete all[name];
      localStorage.setItem(top.dataset.key, JSON.stringify(all));
    } catch {
      says.textContent = say("Unkept");
    }
  };
  const forget = () => {
    try {
      localStorage.removeItem(top.dataset.key);
    } catch {
      says.textContent = say("Unkept");
    }
  };

  // A number alone gets the unit of the sheet; a value with a unit keeps it.
  const number = String.raw`[-−+]?(\d+(\.\d+)?|\.\d+|(\d+ )?\d+\/\d+)`;
  const alone = new RegExp(`^${number}$`);
  const united = new RegExp(`^${number}\\s*[^\\d\\s.,/].*$`);
  const whole = (text, unit) => (unit && alone.test(text) ? `${text} ${unit}` : text);
  const without = (text, unit) => (unit && text.endsWith(` ${unit}`) ? text.slice(0, -unit.length - 1) : text);

  // title is the text of a head, without its unit.
  const title = (cell) => [...cell.childNodes].filter((node) => node.nodeName !== "SMALL").map((node) => node.textContent).join("").trim();

  // labelOf says what to read, where, in which use, and what is expected.
  const labelOf = ({ of, at, use, expected, unit, about, column }) => {
    const parts = [of ? say("At", of, at) : about];
    if (use) parts.push(say("In", use));
    parts.push(column);
    if (expected) parts.push(say("Expects", `${expected} ${unit ?? ""}`.trim()));
    else if (unit) parts.push(unit);
    return parts.reduce((all, part) => say("And", all, part));
  };

  const fields = []; // every field with the blank it stands in
  const names = new Set();
  const add = (input, name, blank) => {
    for (let n = 2, first = name; names.has(name); n++) name = `${first} ${n}`;
    names.add(name);
    fields.push({ input, name, blank });
    const kept = load()[name];
    if (typeof kept === "string") {
      if (input.type === "checkbox") input.checked = true;
      else input.value = without(kept, blank?.unit);
    }
    input.addEventListener("input", () => {
      input.removeAttribute("aria-invalid");
      keep(name, textOf({ input, blank }));
      shown();
    });
  };

  // textOf is what a field holds, as it is kept.
  const textOf = ({ input, blank }) => {
    if (input.type === "checkbox") return input.checked ? say("Yes") : "";
    return whole(input.value.trim(), blank?.unit);
  };

  // stack lets a narrow screen show the cells of a row one below the other, each
  // with its head, and keeps what they are for who hears them.
  const roles = { TABLE: "table", THEAD: "rowgroup", TBODY: "rowgroup", TR: "row", TD: "cell", TH: "columnheader" };
  const stack = (table, row) => {
    if (!table.classList.contains("filled")) {
      table.classList.add("filled");
      for (const part of [table, ...table.querySelectorAll("*")]) if (roles[part.nodeName]) part.setAttribute("role", part.scope?.startsWith("row") ? "rowheader" : roles[part.nodeName]);
    }
    if (row.classList.contains("stacked")) return;
    row.classList.add("stacked");
    for (const cell of row.querySelectorAll("td")) cell.dataset.head = [...table.tHead.rows[0].cells[cell.cellIndex].childNodes].map((node) => node.textContent).join(" ");
  };

  // turn makes a field of an empty cell.
  const turn = (cell) => {
    const from = cell.closest("[data-of],[data-note]");
    if (!from) return;
    const row = cell.parentElement;
    const table = cell.closest("table");
    const { of, at, use, filter, expected, note } = from.dataset;
    const unit = cell.dataset.unit ?? from.dataset.unit;
    const blank = { of, at, use, filter, expected, unit, value: cell.dataset.value, by: cell.closest("[data-with]")?.dataset.with, about: note || title(row.cells[0]), column: title(table.tHead.rows[0].cells[cell.cellIndex]) };
    const input = document.createElement("input");
    const label = document.createElement("label");
    input.id = `fill-${fields.length}`;
    label.htmlFor = input.id;
    label.textContent = labelOf(blank);
    input.type = cell.classList.contains("tick") ? "checkbox" : "text";
    if (unit) input.inputMode = "decimal";
    input.autocomplete = "off";
    input.size = 4;
    if (input.type === "text") input.maxLength = of ? 80 : 300;
    cell.append(input, label);
    stack(table, row);
    add(input, JSON.stringify([of, at, use, filter, blank.about, blank.column]), blank);
  };

  // tick makes a box to tick of a step in a list.
  const tick = (step) => {
    const about = step.closest("section").querySelector("h2").textContent;
    const input = document.createElement("input");
    input.type = "checkbox";
    input.id = `fill-${fields.length}`;
    const text = step.textContent.trim();
    input.setAttribute("aria-label", text);
    step.prepend(input);
    add(input, JSON.stringify([about, text]), { about, step: true });
  };

  // shown repeats the day and the role where the sheet has a cell for them.
  const shown = () => {
    for (const cell of document.querySelectorAll("td[data-mirror]")) cell.textContent = byId(`fill-${cell.dataset.mirror}`).value;
    const kept = [...top.querySelectorAll("input, textarea")];
    for (const field of kept) field.parentElement.classList.toggle("bare", field.value === "");
    top.classList.toggle("typed", kept.some((field) => field.value !== ""));
  };

  // What of TOML there is to write.
  const escapes = { '"': '\\"', "\\": "\\\\", "\b": "\\b", "\t": "\\t", "\n": "\\n", "\f": "\\f", "\r": "\\r" };
  const code = (c) => (c.codePointAt(0) > 0xffff ? "\\U" + c.codePointAt(0).toString(16).padStart(8, "0") : "\\u" + c.codePointAt(0).toString(16).padStart(4, "0"));
  const quote = (text) => `"${text.replace(/\p{Cs}/gu, "\ufffd").replace(/["\\]|(?![\u200c\u200d])[\p{Cc}\p{Cf}\p{Zl}\p{Zp}]/gu, (c) => escapes[c] ?? code(c))}"`;
  const line = (field, text) => (text ? `${field} = ${quote(text)}\n` : "");
  const dated = (field, date) => (date ? `${field} = ${date}\n` : "");

  // Fields that hold a reading become readings; the others go into the note, a
  // line for each row, and for each list of steps how many are ticked.
  const filled = () => fields.filter((field) => field.blank && textOf(field) !== "");
  const reading = ({ input, blank }) =>
    "\n[[reading]]\n" + line("of", blank.of) + line("at", blank.at) + line("value", blank.value ?? textOf({ input, blank })) +
    line("expected", blank.expected && whole(blank.expected, blank.unit)) + line("use", blank.use) + line("filter", blank.filter) +
    line("with", byId(`fill-with-${blank.by}`)?.value.trim()) + dated("calibrated", byId(`fill-calibrated-${blank.by}`)?.value);
  const noted = () => {
    const lines = new Map();
    for (const field of filled().filter(({ blank }) => !blank.of && !blank.step)) {
      const { about, column } = field.blank;
      const cell = say("Cell", column, textOf(field));
      lines.set(about, lines.has(about) ? say("And", lines.get(about), cell) : cell);
    }
    for (const about of new Set(filled().filter(({ blank }) => blank.step).map(({ blank }) => blank.about))) {
      const all = fields.filter(({ blank }) => blank?.step && blank.about === about);
      lines.set(about, say("Steps", all.filter(({ input }) => input.checked).length, all.length));
    }
    return [byId("fill-note").value.trim(), ...[...lines].map(([about, cells]) => say("Line", about, cells))].filter(Boolean).join("\n");
  };

  // fault is what stands in the way of a record, and where.
  const fault = () => {
    if (!day.value) return [say("NoDate"), day];
    const late = [...top.querySelectorAll("[id^=fill-calibrated]")].find(({ value }) => value > day.value);
    if (late) return [say("Late"), late];
    const wrong = filled().find(({ input, blank }) => blank.unit && input.type === "text" && !alone.test(input.value.trim()) && !united.test(input.value.trim()));
    if (wrong) return [say("NoNumber", labelOf(wrong.blank)), wrong.input];
    if (filled().length === 0) return [say("NoValue"), fields.find(({ blank }) => blank)?.input];
    const over = [...noted()].length - Number(top.dataset.longest);
    return over > 0 ? [say("TooLong", over), byId("fill-note")] : null;
  };

  // fileName has the number after the highest of the day's records in the book.
  const fileName = () => {
    const start = `${day.value}-commissioning-`;
    const taken = top.dataset.taken.split(" ").filter((name) => name.startsWith(start)).map((name) => parseInt(name.slice(start.length), 10));
    return `${start}${Math.max(0, ...taken) + 1}.toml`;
  };

  const make = () => {
    const bad = fault();
    if (bad) {
      says.textContent = bad[0];
      bad[1]?.setAttribute("aria-invalid", "true");
      bad[1]?.focus();
      return;
    }
    const readings = filled().filter(({ blank }) => blank.of);
    const text = line("kind", "commissioning") + dated("date", day.value) + line("role", byId("fill-role").value.trim()) + line("note", noted()) + readings.map(reading).join("");
    const link = document.createElement("a");
    link.href = URL.createObjectURL(new Blob([text], { type: "application/toml" }));
    link.download = fileName();
    link.click();
    setTimeout(() => URL.revokeObjectURL(link.href), 60000);
    says.textContent = say("Made", link.download, readings.length);
  };

  const clear = () => {
    for (const { input } of fields) {
      input.value = input.type === "checkbox" ? input.value : "";
      input.checked = false;
      input.removeAttribute("aria-invalid");
    }
    forget();
    shown();
    says.textContent = say("Cleared");
  };

  const look = document.createElement("link");
  look.rel = "stylesheet";
  look.href = "fill.css";
  document.head.append(look);
  for (const field of top.querySelectorAll("input, textarea")) add(field, field.id);
  document.querySelectorAll(".writing:not(.sign) td:empty:not([data-mirror], [data-hand])").forEach(turn);
  document.querySelectorAll(".todo > li").forEach(tick);
  const ask = byId("fill-ask");
  byId("fill-keep").addEventListener("click", make);
  byId("fill-clear").addEventListener("click", () => ask.showModal());
  byId("fill-no").addEventListener("click", () => ask.close());
  byId("fill-yes").addEventListener("click", () => {
    ask.close();
    clear();
  });
  if (Object.keys(load()).length > 0) says.textContent = say("Kept");
  top.hidden = end.hidden = false;
  shown();
})();
