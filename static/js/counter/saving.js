// Saves the counter sheet: a field when it is left, in the order in which they were left, and revisions.
// Each save carries an id of its own, so that one that is sent again is done once.
"use strict";

(() => {
  const AGAIN_MS = 5000;
  const { byId, changed, form, freshId, inHand, inProgress, judge, nameOf, remember, written } = CounterSheet;
  const saving = byId("saving");
  const waiting = new Map();
  let underWay = null;
  let isOffline = false;

  async function post(address, fields) {
    const [body, headers] = [new URLSearchParams(fields), { Accept: "application/json" }];
    const answer = await fetch(address, { method: "POST", body, headers, keepalive: true });
    return { isDone: answer.ok, said: await answer.json() };
  }

  function keep(row) {
    waiting.set(nameOf(row), { id: freshId(), now: written(row) });
    return send();
  }

  function send() {
    underWay ??= sendAll().finally(() => (underWay = null));
    return underWay;
  }

  async function sendAll() {
    while (waiting.size) {
      const [name, entry] = waiting.entries().next().value;
      try {
        await sendOne(name, entry);
        isOffline = false;
      } catch {
        isOffline = true;
        saving.textContent = saving.dataset.offline;
        setTimeout(send, AGAIN_MS);
        return;
      }
    }
  }

  async function sendOne(name, entry) {
    const owner = form.dataset.code ? `/builds/${form.dataset.code}` : "/counter";
    const [typed, tool] = entry.now;
    const fields = { form_id: entry.id, [name]: typed, [`${name}__tool`]: tool };
    const answer = await post(`${owner}/facts/${name}`, fields);
    if (waiting.get(name) === entry) waiting.delete(name);
    // A fact gets its error with the verdicts; the name of the job is no fact.
    if (name === "job") byId("job-error").textContent = answer.said.errors?.[0].detail ?? "";
    if (!answer.isDone) {
      saving.textContent = answer.said.detail;
      return;
    }
    remember(name, entry.now);
    adopt(answer.said);
  }

  // The first saved field has made a build: the page becomes that build's without being loaded again.
  function adopt(said) {
    saving.textContent = said.said;
    byId("saved").textContent = said.moment;
    if (said.revision) byId("block-revision").textContent = said.revision;
    if (form.dataset.code === said.code) return;
    form.dataset.code = byId("block-code").textContent = said.code;
    form.action = said.address;
    history.replaceState(null, "", said.address);
    const heading = document.querySelector("h1");
    document.title = document.title.replace(heading.textContent, said.heading);
    heading.textContent = said.heading;
    byId("result").href = said.result;
    byId("copy").action = said.copies;
    byId("result").hidden = byId("copy").hidden = false;
    byId("sheet").href = said.sheet;
    byId("sheet").removeAttribute("aria-disabled");
  }

  async function saveFields() {
    for (const row of changed()) keep(row);
    await send();
    return !waiting.size;
  }

  async function saveRevision() {
    const button = byId("save");
    if (button.ariaDisabled === "true") return;
    button.ariaDisabled = "true";
    saving.textContent = saving.dataset.saving;
    inHand.value = "";
    judge();
    try {
      if (!(await saveFields())) return;
      const answer = await post(form.getAttribute("action"), [...new FormData(form), ["action", "save"]]);
      if (answer.isDone) adopt(answer.said);
      else saving.textContent = answer.said.detail;
    } catch {
      saving.textContent = saving.dataset.notSaved;
    } finally {
      button.ariaDisabled = null;
    }
  }

  async function openSheet() {
    await saveFields();
    if (byId("sheet").href) location.assign(byId("sheet").href);
    else saving.textContent = saving.dataset.noSheet;
  }

  form.addEventListener("row-left", (event) => keep(event.detail));
  form.addEventListener("save-revision", saveRevision);
  form.addEventListener("open-sheet", openSheet);
  document.addEventListener("htmx:response:error", () => (saving.textContent = saving.dataset.noVerdict));
  addEventListener("online", send);
  addEventListener("pagehide", () => inProgress() && keep(inProgress()));
  addEventListener("beforeunload", (event) => isOffline && event.preventDefault());
})();
