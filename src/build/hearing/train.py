"""Trains a small judge (one hidden layer of tanh, softmax) and writes it as hingetone.hearing.TrainedJudge reads it.

usage: train.py EXAMPLES OUT UNITS [DECAY [BALANCE]] [-q]
EXAMPLES: a line an example: its sound, its class (0, 1, ...; -1 leaves it out), its measures.
BALANCE: from 0, every example counts the same, to 1, every class does.
Prints what each third of the sounds, left out, would be taken for (not with -q), then trains on all. Needs numpy and scipy."""
import sys

import numpy as np
from scipy.optimize import minimize


def read(path):
    sounds, classes, measures = [], [], []
    for line in open(path):
        words = line.split()
        if words[1] != "-1":
            sounds.append(words[0])
            classes.append(int(words[1]))
            measures.append([float(w) for w in words[2:]])
    return np.array(sounds), np.array(classes), np.array(measures)


def unpack(theta, inputs, units, count):
    first = units * (inputs + 1)
    return theta[:first].reshape(units, inputs + 1), theta[first:].reshape(count, units + 1)


def forward(theta, x, units, count):
    hidden, output = unpack(theta, x.shape[1], units, count)
    h = np.tanh(x @ hidden[:, :-1].T + hidden[:, -1])
    z = h @ output[:, :-1].T + output[:, -1]
    z -= z.max(1, keepdims=True)
    p = np.exp(z)
    return h, p / p.sum(1, keepdims=True)


def fit(x, y, units, count, decay, balance):
    rng = np.random.default_rng(1)
    n, inputs = x.shape
    start = rng.standard_normal(units * (inputs + 1) + count * (units + 1)) * 0.3 / np.sqrt(inputs)
    target = np.eye(count)[y]
    weight = (1 / np.bincount(y, minlength=count)) ** balance
    weight = weight[y] / weight[y].mean()

    def loss(theta):
        hidden, output = unpack(theta, inputs, units, count)
        h, p = forward(theta, x, units, count)
        dz = (p - target) * weight[:, None] / n
        dh = (dz @ output[:, :-1]) * (1 - h * h)
        gradient = np.concatenate([
            np.hstack([dh.T @ x, dh.sum(0)[:, None]]).ravel(), np.hstack([dz.T @ h, dz.sum(0)[:, None]]).ravel()])
        value = -(weight * np.log(np.maximum(1e-12, p[np.arange(n), y]))).mean() + decay * (theta**2).sum()
        return value, gradient + 2 * decay * theta

    return minimize(loss, start, jac=True, method="L-BFGS-B", options={"maxiter": 300}).x


def main():
    numbers = [word for word in sys.argv[1:] if word != "-q"]
    path, out, units = numbers[0], numbers[1], int(numbers[2])
    decay, balance = [float(word) for word in numbers[3:]] + [3e-4, 0.0][len(numbers) - 3:]
    sounds, y, x = read(path)
    count = y.max() + 1
    mean, scale = x.mean(0), x.std(0) + 1e-6
    x = (x - mean) / scale
    names = np.array(sorted(set(sounds)))
    table = np.zeros((count, count), int)
    for fold in range(0 if "-q" in sys.argv else 3):
        out_of_it = np.isin(sounds, names[fold::3])
        theta = fit(x[~out_of_it], y[~out_of_it], units, count, decay, balance)
        taken = forward(theta, x[out_of_it], units, count)[1].argmax(1)
        np.add.at(table, (y[out_of_it], taken), 1)
    print(table)
    hidden, output = unpack(fit(x, y, units, count, decay, balance), x.shape[1], units, count)
    with open(out, "w") as file:
        file.write("# written by src/build/hearing/train.py\n%d %d %d\n" % (x.shape[1], units, count))
        for row in [mean, scale, *hidden, *output]:
            file.write(" ".join("%.5g" % v for v in row) + "\n")


main()
