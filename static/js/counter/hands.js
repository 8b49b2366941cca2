// The counter sheet under the hands: keys and presses, and what comes back while somebody types.
// It only quickens a form that works without. Nothing here moves the focus but a key or a press; what is to be saved
// it tells saving.js by events: "row-left", "save-revision" and "open-sheet". Both are sent as one script.
"use strict";

const CounterSheet = (() => {
  const byId = (id) => document.getElementById(id);
  const form = byId("counter");
  const { form_id: formId, shown, in_hand: inHand } = form.elements;
  const rows = [...form.querySelectorAll("[data-row]")];
  const rowOf = new Map(rows.map((row) => [row.dataset.row, row]));
  const stored = new Map(Object.entries(JSON.parse(shown.value)));

  const tell = (event, detail) => form.dispatchEvent(new CustomEvent(event, { detail }));
  // Listened to by htmx, which then sends the sheet to be judged.
  const judge = () => tell("left");

  // --- a row: its place to write, what is written there and what is stored of it

  const nameOf = (row) => row.dataset.row;
  const lineOf = (row) => row.querySelector(".entry__line");
  const toolOf = (row) => row.querySelector("select");
  const dotsOf = (row) => [...row.querySelectorAll("input[type=radio]")];
  const chosenOf = (row) => dotsOf(row).find((dot) => dot.checked);
  const placeOf = (row) => lineOf(row) ?? chosenOf(row) ?? dotsOf(row)[0];
  const fieldOf = (row, typed, tool) => (typed.trim() ? [typed, toolOf(row) ? tool : ""] : ["", ""]);
  const written = (row) => fieldOf(row, (lineOf(row) ?? chosenOf(row))?.value ?? "", toolOf(row)?.value);
  const storedOf = (row) => fieldOf(row, ...(stored.get(nameOf(row)) ?? ["", ""]));
  // Who issues a sheet is kept with a revision only.
  const isChanged = (row) => nameOf(row) !== "issued_by" && String(written(row)) !== String(storedOf(row));

  function write(row, [typed, tool]) {
    if (lineOf(row)) lineOf(row).value = typed;
    for (const dot of dotsOf(row)) dot.checked = typed !== "" && dot.value === typed;
    if (toolOf(row)) toolOf(row).value = tool || toolOf(row).options[0].value;
    placeOf(row).dispatchEvent(new Event("input", { bubbles: true }));
  }

  function showChange(row) {
    const changed = isChanged(row);
    row.toggleAttribute("data-changed", changed);
    const button = row.querySelector("[name=undo]");
    if (!changed) button?.remove();
    if (!changed || button) return;
    const fresh = byId("undo").content.firstElementChild.cloneNode(true);
    fresh.value = nameOf(row);
    fresh.lastElementChild.textContent = `: ${row.querySelector(".entry__name").textContent}`;
    row.querySelector(".entry__place")?.append(fresh);
  }

  function remember(name, now) {
    stored.set(name, now);
    shown.value = JSON.stringify(Object.fromEntries(stored));
    showChange(rowOf.get(name));
  }

  // --- keys

  function goTo(row) {
    const place = placeOf(row);
    place.focus();
    if (place === lineOf(row)) place.select();
  }

  function goToNextFact() {
    const row = rowOf.get(byId("settles-most")?.dataset.fact);
    if (row) goTo(row);
  }

  function choose(row, dot) {
    write(row, dot.checked ? ["", ""] : [dot.value, ""]);
    dot.focus();
  }

  const step = (row, by) => goTo(rows[(rows.indexOf(row) + by + rows.length) % rows.length]);
  const undo = (row) => write(row, storedOf(row));
  const saveRevision = () => tell("save-revision");
  const openSheet = () => tell("open-sheet");

  function keyAnywhere(event) {
    if (event.key === "Enter" && (event.ctrlKey || event.metaKey)) return saveRevision;
    if (event.ctrlKey || event.metaKey || event.altKey || event.shiftKey) return null;
    return { F2: goToNextFact, F8: openSheet }[event.key];
  }

  function keyInRow(event, row) {
    const { key, target } = event;
    if (event.ctrlKey || event.metaKey || event.altKey) return null;
    if (key === "Escape") return isChanged(row) && (() => undo(row));
    if (target.matches("button")) return null;
    if (key === "Enter") return () => step(row, event.shiftKey ? -1 : 1);
    // A list of tools keeps its arrows. Among words left and right stay the browser's, while up and down go on:
    // going down the sheet must never change an answer.
    if (target.matches("select")) return null;
    if (key === "ArrowDown") return () => step(row, 1);
    if (key === "ArrowUp") return () => step(row, -1);
    const dot = target.type === "radio" && dotsOf(row).find((each) => each.dataset.key === key.toLowerCase());
    return dot && (() => choose(row, dot));
  }

  document.addEventListener("keydown", (event) => {
    if (event.isComposing) return;
    const row = event.target.closest?.("[data-row]");
    const act = keyAnywhere(event) || (row && keyInRow(event, row));
    if (!act) return;
    event.preventDefault();
    act();
  });

  // --- presses

  const presses = {
    not_known: (row) => (write(row, ["?", toolOf(row)?.value]), goTo(row)),
    undo: (row) => (undo(row), goTo(row)),
    "settles-most": goToNextFact,
    sheet: openSheet,
  };
  let wasChosen = null; // a word that is pressed again is cleared

  form.addEventListener("pointerdown", ({ target }) => {
    const dot = target.closest(".choice")?.querySelector("input");
    wasChosen = dot?.checked ? dot : null;
  });

  form.addEventListener("click", (event) => {
    const row = event.target.closest("[data-row]");
    if (row && event.target === wasChosen) write(row, ["", ""]);
    const pressed = event.target.closest("button, a");
    const act = presses[pressed?.name || pressed?.id];
    if (!act || event.ctrlKey || event.metaKey) return;
    event.preventDefault();
    act(row);
  });

  form.addEventListener("submit", (event) => {
    event.preventDefault();
    if (event.submitter?.value === "save") saveRevision();
    else judge();
  });

  // --- the row in hand

  const edited = new Set();
  let current = null;

  function showInHand(row) {
    const box = byId("in-hand");
    const copy = (from, to) => (box.querySelector(to).textContent = row.querySelector(from)?.textContent.trim() ?? "");
    copy(".entry__label", ".in-hand__title");
    copy(".entry__hint", ".in-hand__how");
    copy(".entry__notes", ".in-hand__note");
    box.hidden = false;
  }

  form.addEventListener("input", ({ target }) => {
    const row = target.closest("[data-row]");
    if (!row) return;
    edited.add(row);
    inHand.value = nameOf(row);
    formId.value = freshId();
    showChange(row);
  });

  form.addEventListener("focusin", ({ target }) => {
    current = target.closest("[data-row]");
    if (current) showInHand(current);
  });

  form.addEventListener("focusout", ({ target, relatedTarget }) => {
    const row = target.closest("[data-row]");
    if (!row || row.contains(relatedTarget)) return;
    current = null;
    inHand.value = "";
    if (isChanged(row)) tell("row-left", row);
    if (edited.delete(row)) judge();
  });

  // --- what comes back

  function replaceAnswer(row, fresh) {
    const place = row.querySelector(".entry__answer");
    if (place.innerHTML === fresh.innerHTML) return;
    const before = place.querySelector(".verdict")?.textContent;
    place.replaceChildren(...fresh.childNodes);
    const verdict = place.querySelector(".verdict");
    verdict?.classList.toggle("verdict--changed", verdict.textContent !== before);
    if (lineOf(row)) lineOf(row).ariaInvalid = place.querySelector(".entry__error").textContent ? "true" : null;
  }

  document.addEventListener("htmx:after:swap", () => {
    const answers = byId("answers");
    if (!answers) return;
    for (const fresh of answers.content.children) replaceAnswer(rowOf.get(fresh.dataset.for), fresh);
    answers.remove();
    if (current) showInHand(current);
  });

  function freshId() {
    const bytes = crypto.getRandomValues(new Uint8Array(16));
    return Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
  }

  const inProgress = () => (current && isChanged(current) ? current : null);
  const changed = () => rows.filter(isChanged);
  return { byId, changed, form, freshId, inHand, inProgress, judge, nameOf, remember, written };
})();
