Software by others in this jar
==============================

Each line: name, group:artifact:version, licence, home. Texts of the licences:
META-INF/LICENSE and META-INF/LICENSE.txt (one after the other, as the parts bring
them), META-INF/LICENSE-LGPL-2.1.txt, META-INF/LICENSE-LGPL-3.txt,
META-INF/licenses/, liberation/LICENSE; notices: META-INF/NOTICE and
META-INF/NOTICE.txt.

This list is written by the build.

<#list dependencyMap as entry>
<#assign project = entry.getKey()/>
<#assign licenses = entry.getValue()/>
${project.name}, ${project.groupId}:${project.artifactId}:${project.version}, <#list licenses as licence>${licence}<#if licence_has_next> or </#if></#list>, ${(project.url)!"no home stated"}
</#list>
