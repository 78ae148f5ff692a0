//! `verify`: is a signed sign-off to be believed, and why not.

use crate::args::Args;
use crate::clock;
use crate::{Answer, REFUSED};
use serde_json::{Value, json};
use std::process::ExitCode;
use stepboard::content::{self, Content, ENGLISH, Texts};
use stepboard::rules::term::Term;
use stepboard::signoff::{Code, Credential, PublicKey, Refusal, TrustList, Verdict, When, Why, verify};

const ALLOWED: [&str; 5] = ["FILE", "--trust LIST", "--on DATE", "--root KEY", "--json"];

pub(crate) fn run(content: &Content, mut args: Args) -> Result<Answer, Vec<String>> {
    let texts = content.texts(ENGLISH);
    let (trust, on, root) = (args.take("trust"), args.take("on"), args.take("root"));
    args.nothing_left(&ALLOWED)?;
    let wrong = |what: &str, refusal: &Refusal| vec![format!("{what}: {}", worded(texts, refusal))];
    let ([file], Some(trust)) = (args.names.as_slice(), trust) else {
        return Err(vec![format!("one signed file and its trust list are needed: {}", ALLOWED.join(", "))]);
    };
    let root = root.map(|text| PublicKey::from_did(&text)).transpose();
    let root = root.map_err(|refusal| wrong("--root", &refusal))?;
    let on = on.map_or_else(clock::now, |text| When::day_or_moment(&text));
    let on = on.map_err(|refusal| wrong("--on", &refusal))?;
    let list = TrustList::read(&read(&trust)?, root.as_ref()).map_err(|refusal| wrong(&trust, &refusal))?;
    let verdict = verify(&read(file)?, &list, &content.competencies, &on);
    if let Some(reason) = verdict.reasons.iter().find(|reason| reason.why == Why::NotJson) {
        return Err(wrong(file, reason));
    }
    let text = if args.switches.iter().any(|switch| switch == "json") {
        told(&verdict, &list, &on, texts).to_string()
    } else {
        lines(&verdict, &list, texts).join("\n")
    };
    let code = if verdict.accepted() { ExitCode::SUCCESS } else { ExitCode::from(REFUSED) };
    Ok(Answer { text, code })
}

fn read(path: &str) -> Result<Vec<u8>, Vec<String>> {
    std::fs::read(path).map_err(|error| vec![format!("{path}: {error}")])
}

fn worded(texts: &Texts, refusal: &Refusal) -> String {
    let args = content::Args::from([("at".to_owned(), refusal.at.clone())]);
    texts.fill(&format!("verify.{}", refusal.why.slug()), &args)
}

/// What a person reads.
fn lines(verdict: &Verdict, list: &TrustList, texts: &Texts) -> Vec<String> {
    let fill = |key: &str, args: &[(&str, &str)]| {
        let args = args.iter().map(|(name, value)| ((*name).to_owned(), (*value).to_owned())).collect();
        texts.fill(&format!("verify.{key}"), &args)
    };
    let head = if verdict.accepted() { "accepted" } else { "refused" };
    let mut lines = vec![fill(head, &[])];
    lines.extend(verdict.reasons.iter().map(|reason| format!("- {}", worded(texts, reason))));
    if let (Some(one), Some(hash)) = (&verdict.credential, verdict.hash) {
        lines.push(fill(
            "signed-by",
            &[
                ("name", &one.assessor.name),
                ("number", one.assessor.number.text()),
                ("subject", one.subject.text()),
                ("competency", &one.achievement.name),
                ("from", one.from.text()),
                ("until", one.until.text()),
            ],
        ));
        lines.push(Code::new(one, hash).to_string());
    }
    lines.push(fill("unseen", &[("issued", list.issued.text())]));
    lines.push(fill("compare", &[("fingerprint", &list.root.fingerprint())]));
    lines
}

/// What a script reads.
fn told(verdict: &Verdict, list: &TrustList, on: &When, texts: &Texts) -> Value {
    let reasons: Vec<Value> = verdict
        .reasons
        .iter()
        .map(|reason| json!({ "why": reason.why, "at": reason.at, "text": worded(texts, reason) }))
        .collect();
    let code =
        verdict.credential.as_ref().zip(verdict.hash).map(|(one, hash)| Code::new(one, hash).to_string());
    json!({
        "format": "stepboard-verify", "format_version": 1,
        "accepted": verdict.accepted(), "on": on, "reasons": reasons,
        "sign_off": verdict.credential.as_ref().map(sign_off),
        "hash": verdict.hash.map(|hash| hash.to_string()), "code": code,
        "trust": {
            "shop": list.shop, "number": list.number, "issued": list.issued,
            "root": list.root, "fingerprint": list.root.fingerprint(),
        },
    })
}

fn sign_off(one: &Credential) -> Value {
    json!({
        "id": one.id, "subject": one.subject, "competency": one.achievement.slug, "name": one.achievement.name,
        "assessor": { "number": one.assessor.number, "name": one.assessor.name, "key": one.assessor.key },
        "from": one.from, "until": one.until,
    })
}
