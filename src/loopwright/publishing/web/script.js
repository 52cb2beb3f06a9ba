(() => {
  "use strict";
  const held = JSON.parse(document.getElementById("rows-by-size").textContent);
  const say = held.say, several = held.sizes.length > 1;
  const find = (query, inside = document) => [...inside.querySelectorAll(query)];
  const fill = (frame, slots) => frame.replace(/\{(\w+)\}/g, (all, name) => name in slots ? slots[name] : all);
  let size = several ? -1 : 0, ticks = {}, before = null, keeps = true;

  const rows = find("[data-row]").map((node) => {
    const [variants, of] = held.rows[Number(node.dataset.row)];
    const part = (name) => node.querySelector(`[data-is=${name}]`);
    const parts = Object.fromEntries(["lead", "label", "said", "count"].map((name) => [name, part(name)]));
    const arm = node.querySelector(".arm"), box = node.querySelector("input");
    const shown = Object.fromEntries(Object.entries(parts).filter(([, n]) => n).map(([name, n]) => [name, [...n.childNodes]]));
    return { node, variants, of, parts, shown, arm, box, figures: arm ? [...arm.childNodes] : [], step: Boolean(box), name: box?.ariaLabel };
  });
  const steps = rows.filter((row) => row.step);
  const of = (row, at) => row.of ? (row.of[at] < 0 ? null : row.variants[row.of[at]]) : row.variants[0];
  const each = (row) => size < 0 ? 1 : of(row, size)?.[5] ?? 1;
  const times = (row) => typeof each(row) === "number" ? each(row) : each(row).length;
  const called = (row) => row.box.ariaLabel.replace(`: ${say.tick}`, "");
  const element = (name, text, kind) => Object.assign(document.createElement(name), { textContent: text, className: kind });

  // what is kept: ticks for each size, and the size that was chosen
  const key = (what) => `${held.key}|${what}`;
  const kept = () => key(size < 0 ? "all sizes" : held.sizes[size]);
  const read = (name) => { try { return localStorage.getItem(name); } catch { keeps = false; return null; } };
  const write = (name, value) => { try { localStorage.setItem(name, value); } catch { keeps = false; } };
  const load = () => {
    let found = null;
    try { found = JSON.parse(read(kept()) ?? "{}"); } catch { found = null; }
    ticks = {};
    if (found && typeof found === "object") for (const row of steps) {
      const n = found[row.node.id];
      if (Number.isInteger(n) && n > 0) ticks[row.node.id] = n;
    }
  };
  const save = () => write(kept(), JSON.stringify(ticks));
  const done = (row) => Math.min(ticks[row.node.id] ?? 0, times(row));

  // the stitches at the end of the row at hand: of several rows told at once, of the one that is being worked
  const count = (row, at) => typeof each(row) === "number" ? of(row, size)?.[4] : each(row)[at];
  const figure = (n) => n === null || n === undefined ? [] : [element("span", String(n), "fig")];
  const asWritten = (row) => {
    for (const [name, nodes] of Object.entries(row.shown)) row.parts[name].replaceChildren(...nodes);
    if (row.arm) row.arm.replaceChildren(...row.figures);
    if (row.box) row.box.ariaLabel = row.name;
    row.node.hidden = false;
  };
  const asOfSize = (row, at) => {
    const variant = of(row, at);
    asWritten(row);
    row.node.hidden = !variant;
    if (!variant) return;
    if (!row.step) {
      if (row.parts.said.textContent !== variant[0]) row.parts.said.replaceChildren(variant[0]);
      return;
    }
    const [lead, label, words, printed] = variant;
    const said = { lead, label: label ? `${label}:` : "", said: words, count: printed ? `(${printed})` : "" };
    for (const [name, text] of Object.entries(said)) row.parts[name].replaceChildren(text);
    const name = (lead + label).replace(/^[ :]+|[ :]+$/g, "");
    if (name) row.box.ariaLabel = `${name}: ${say.tick}`;
  };
  const columns = () => {
    for (const table of find("table[data-sizes]")) for (const line of table.rows) {
      if (line.classList.contains("group")) { line.cells[0].colSpan = size < 0 ? held.sizes.length + 1 : 2; continue; }
      for (let i = 1; i < line.cells.length; i++) line.cells[i].hidden = size >= 0 && i !== size + 1;
    }
  };
  const choose = (at) => {
    size = at; before = null;
    for (const row of rows) if (size < 0) asWritten(row); else if (several) asOfSize(row, size);
    if (several) columns();
    const named = document.querySelector("[data-is=size]");
    if (several && named) named.textContent = size < 0 ? say["all-sizes"] : held.sizes[size];
    document.body.classList.toggle("chosen", several && size >= 0);
    load(); show();
  };

  const bar = document.querySelector(".bar"), place = document.querySelector(".place");
  const button = (name) => document.querySelector(`[data-do=${name}]`);
  const open = () => steps.filter((row) => !row.node.hidden);
  const atHand = () => open().find((row) => done(row) < times(row)) ?? null;
  const show = () => {
    const seen = open(), now = atHand();
    for (const row of steps) {
      const n = done(row), all = times(row), here = row === now;
      row.box.checked = n >= all;
      row.box.indeterminate = n > 0 && n < all;
      row.node.classList.toggle("now", here);
      if (here) row.node.setAttribute("aria-current", "step"); else row.node.removeAttribute("aria-current");
      if (size >= 0) row.arm.replaceChildren(...figure(count(row, here ? n : all - 1)));
      if (all > 1 && here) row.arm.append(element("span", fill(say.of, { n: n + 1, all }), "done"));
    }
    for (const node of find("[data-station]")) {
      const at = Number(node.dataset.station), variant = now && at >= 0 ? of(now, at) : null;
      node.textContent = variant ? variant[4] ?? "" : now && at >= 0 ? "–" : "";
    }
    const total = seen.reduce((sum, row) => sum + times(row), 0), so_far = seen.reduce((sum, row) => sum + done(row), 0);
    const link = place.firstElementChild, n = Math.min(so_far + 1, total);
    link.replaceChildren(
      element("span", now ? `${called(now)}, ` : say.finished, "unseen"), element("span", `${now ? n : total} `, "fig"),
      element("b", fill(say["of-all"], { all: total }), ""),
    );
    link.href = `#${(now ?? seen[0])?.node.id ?? "instructions"}`;
    if (bar) {
      const variant = now && (size >= 0 || !now.of && now.variants.length === 1) ? of(now, Math.max(size, 0)) : null, all = now ? times(now) : 1;
      const said = now ? fill(all > 1 ? say["done-of"] : say.done, { row: called(now), n: done(now) + 1, all }) : say.finished;
      const ends = now && size >= 0 && done(now) < all - 1 && typeof each(now) !== "number" ? count(now, done(now)) : variant?.[3];
      button("done").textContent = ends ? `${said}: ${ends}` : said;
      button("done").disabled = !now;
      button("back").disabled = so_far === 0;
      button("clear").textContent = before ? say.undo : say.untick;
      button("clear").disabled = !before && so_far === 0;
      document.querySelector("[data-is=kept]").textContent = keeps ? say.kept : say["not-kept"];
    }
  };
  const set = (row, n) => {
    if (n > 0) ticks[row.node.id] = n; else delete ticks[row.node.id];
    before = null; save(); show();
  };
  const bring = () => {
    const box = atHand()?.node.getBoundingClientRect();
    if (box && (box.top < 140 || box.bottom > innerHeight - 110)) atHand().node.scrollIntoView({ block: "center" });
  };

  for (const row of steps) row.box.addEventListener("change", () => set(row, row.box.checked ? times(row) : 0));
  if (bar) {
    button("done").addEventListener("click", () => { const now = atHand(); if (now) { set(now, done(now) + 1); bring(); } });
    button("back").addEventListener("click", () => {
      const now = atHand(), seen = open(), at = now ? seen.indexOf(now) : seen.length;
      const last = now && done(now) > 0 ? now : seen.slice(0, at).reverse().find((row) => done(row) > 0) ?? seen.find((row) => done(row) > 0);
      if (last) { set(last, done(last) - 1); bring(); }
    });
    button("clear").addEventListener("click", () => {
      if (before) { ticks = before; before = null; } else { before = ticks; ticks = {}; }
      save(); show();
    });
    bar.hidden = false;
    document.querySelector(".kept").hidden = false;
  }
  const room = () => {
    for (const box of find(".drawn")) {
      const label = box.parentElement.querySelector(".larger");
      label.hidden = !label.firstElementChild.checked && box.firstElementChild.width.baseVal.value <= box.clientWidth;
    }
  };
  room();
  addEventListener("resize", room);
  place.hidden = !steps.length;
  for (const radio of find(".stations input")) {
    radio.addEventListener("change", () => { choose(Number(radio.value)); write(key("size"), size < 0 ? "" : held.sizes[size]); });
  }
  if (several) {
    document.querySelector(".stations").hidden = false;
    const at = held.sizes.indexOf(read(key("size")) ?? "");
    const radio = document.querySelector(`.stations input[value="${at}"]`);
    radio.checked = true;
    if (at >= 0) {
      radio.parentElement.scrollIntoView({ block: "nearest", inline: "center" });
    }
    choose(at);
  } else choose(0);
  addEventListener("storage", (event) => { if (event.key === kept()) { load(); show(); } });
})();
