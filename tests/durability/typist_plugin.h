#pragma once

#include <QGenericPlugin>

/// How Qt finds the typist, see typist.cpp.
class TypistPlugin : public QGenericPlugin {
    Q_OBJECT
    Q_PLUGIN_METADATA(IID QGenericPluginFactoryInterface_iid FILE "typist.json")
public:
    QObject* create(const QString& key, const QString& specification) override;
};
