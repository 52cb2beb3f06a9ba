"use strict";
(() => {
  const plan = JSON.parse(document.getElementById("plan").textContent);
  const $ = (id) => document.getElementById(id);
  const key = "loopwright film " + plan.title + " " + plan.size;
  let state = { at: 0, began: 0, log: [] }; // log: [ms since the first shot, shot, word]
  try { state = JSON.parse(localStorage.getItem(key)) || state; } catch { /* a page opened from a file may keep nothing */ }
  const keep = () => { try { localStorage.setItem(key, JSON.stringify(state)); } catch { /* as above */ } };
  const clock = (ms) => {
    const s = Math.floor(ms / 1000), h = Math.floor(s / 3600);
    const two = (n) => String(n).padStart(2, "0");
    return (h ? h + ":" + two(Math.floor(s / 60) % 60) : String(Math.floor(s / 60))) + ":" + two(s % 60);
  };
  const now = () => (state.began ? Date.now() - state.began : 0);
  const mark = (word) => {
    if (!state.began) state.began = Date.now();
    state.log.push([now(), state.at, word || ""]);
  };
  const lines = () => "# " + plan.title + ", size " + plan.size + "\n" + state.log.map(([ms, at, word]) =>
    clock(ms) + "." + Math.floor(ms / 100) % 10 + " " + (word ? "# " : "") + "shot " + (at + 1) + " " + plan.shots[at].label + (word ? " " + word : "")).join("\n") + "\n";
  const times = () => {
    const found = new Map();
    for (const [ms, at, word] of state.log) if (!word) found.set(at, ms);
    return found;
  };
  const draw = () => {
    const shot = plan.shots[state.at], done = times();
    const size = plan.size === "one size" ? "" : " · " + plan.size + " on camera";
    $("where").textContent = "Shot " + (state.at + 1) + " of " + plan.shots.length + size;
    $("label").textContent = shot.label;
    $("count").textContent = shot.count === null ? "" : shot.count;
    $("say").textContent = shot.say;
    $("show").textContent = shot.show;
    $("screen").textContent = shot.screen || "–";
    $("done").textContent = !done.size ? "Camera is on: shot 1 begins" : state.at === plan.shots.length - 1 ? "The last shot is done" : shot.label + ": next shot";
    $("times").replaceChildren(...plan.shots.map((s, i) => {
      const li = document.createElement("li");
      li.textContent = done.has(i) ? clock(done.get(i)) : "";
      li.className = i === state.at ? "on" : done.has(i) ? "was" : "";
      li.title = s.label;
      return li;
    }));
    const on = $("times").children[state.at];
    $("times").scrollTop = on.offsetTop - $("times").offsetTop - $("times").clientHeight / 2;
    keep();
  };
  const act = {
    done() {
      if (!state.began) mark();
      else if (state.at < plan.shots.length - 1) { state.at += 1; mark(); }
      else act.save();
      draw();
    },
    back() { state.at = Math.max(0, state.at - 1); draw(); },
    more() { mark(); draw(); },
    wrong() { mark("a word went wrong"); draw(); },
    save() {
      const link = document.createElement("a");
      link.href = URL.createObjectURL(new Blob([lines()], { type: "text/plain" }));
      link.download = "film-log.txt";
      link.click();
      setTimeout(() => URL.revokeObjectURL(link.href), 1000);
    },
    copy() { if (navigator.clipboard) navigator.clipboard.writeText(lines()); },
    clear() { if (confirm("Begin again? The times so far are lost.")) { state = { at: 0, began: 0, log: [] }; draw(); } },
  };
  for (const id of ["done", "back", "more", "wrong", "save", "clear"]) $(id).addEventListener("click", act[id]);
  document.addEventListener("keydown", (e) => {
    if (e.ctrlKey || e.metaKey || e.altKey || (e.target.tagName === "BUTTON" && (e.key === " " || e.key === "Enter"))) return;
    const todo = { " ": "done", Enter: "done", ArrowRight: "done", PageDown: "done", ArrowLeft: "back", PageUp: "back", r: "more", w: "wrong", c: "copy" }[e.key];
    if (todo) { e.preventDefault(); act[todo](); }
  });
  draw();
})();
