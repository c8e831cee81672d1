"""Posteriors of scikit-learn's CategoricalNB, read from and written to JSON on the standard streams."""
import json
import sys

import numpy as np
from sklearn.naive_bayes import CategoricalNB

job = json.load(sys.stdin)
if job["kind"] == "whole":
    x = np.array(job["x"])
    y = np.array(job["y"])
    model = CategoricalNB(alpha=job["alpha"], class_prior=job["prior"], min_categories=job["categories"])
    model.fit(x, y)
    json.dump(model.predict_proba(x).tolist(), sys.stdout)
else:
    # Cross-validation with gaps: one CategoricalNB per trait on the plants that have it, several states sharing one plant's weight;
    # a plant's log likelihood is the sum over the traits it has of the log of the summed probability of its states.
    y = np.array(job["y"])
    folds = np.array(job["folds"])
    classes = job["classes"]
    total = np.zeros((len(y), classes))
    for fold in sorted(set(job["folds"])):
        train = folds != fold
        prior = (np.bincount(y[train], minlength=classes) + 1.0) / (train.sum() + classes)
        total[folds == fold] = np.log(prior)
        for trait, size in zip(job["traits"], job["categories"]):
            rows = [(i, s, 1.0 / len(v)) for i, v in enumerate(trait) if train[i] for s in v]
            model = CategoricalNB(alpha=job["alpha"], fit_prior=False, min_categories=size)
            model.partial_fit([[s] for _, s, _ in rows], y[[i for i, _, _ in rows]], classes=range(classes), sample_weight=[w for _, _, w in rows])
            p = np.exp(model.feature_log_prob_[0])
            for i, v in enumerate(trait):
                if folds[i] == fold and v:
                    total[i] += np.log(p[:, v].sum(axis=1))
    total -= total.max(axis=1, keepdims=True)
    p = np.exp(total)
    json.dump((p / p.sum(axis=1, keepdims=True)).tolist(), sys.stdout)
